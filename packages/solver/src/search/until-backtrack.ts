/** Marks on numbers from 0 that hold until the search goes back above the level at which they were made. */
export class UntilBacktrack {
  private readonly marks: Uint8Array;
  private readonly marked: number[] = [];
  private readonly levels: number[] = [];

  constructor(count: number) {
    this.marks = new Uint8Array(count);
  }

  has(item: number): boolean {
    return this.marks[item] === 1;
  }
  add(item: number, level: number): void {
    if (this.has(item)) return;
    this.marks[item] = 1;
    this.marked.push(item);
    this.levels.push(level);
  }
  wentBack(level: number): void {
    while (this.levels.length > 0 && (this.levels.at(-1) as number) > level) {
      this.levels.pop();
      this.marks[this.marked.pop() as number] = 0;
    }
  }
}
