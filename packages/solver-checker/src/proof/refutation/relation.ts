/** Which of `size` things comes before which. Most relations stay blank; a table is made for the first pair. */
export class Relation {
  readonly size: number;
  private table: Uint8Array | null = null;

  constructor(size: number) {
    this.size = size;
  }

  has(i: number, j: number): boolean {
    return this.table !== null && this.table[i * this.size + j] === 1;
  }
  add(i: number, j: number): void {
    this.table ??= new Uint8Array(this.size * this.size);
    this.table[i * this.size + j] = 1;
  }
  addAll({ table }: Relation): void {
    if (table === null) return;
    const own = (this.table ??= new Uint8Array(table.length));
    for (let at = 0; at < table.length; at++) if (table[at] === 1) own[at] = 1;
  }

  /** Adds what follows from steps one after another. Says whether something would come before itself. */
  close(): boolean {
    const { size: n, table } = this;
    if (table === null) return false;
    for (let k = 0; k < n; k++) {
      for (let i = 0; i < n; i++) {
        if (table[i * n + k] !== 1) continue;
        for (let j = 0; j < n; j++) if (table[k * n + j] === 1) table[i * n + j] = 1;
      }
    }
    for (let i = 0; i < n; i++) if (table[i * n + i] === 1) return true;
    return false;
  }
}
