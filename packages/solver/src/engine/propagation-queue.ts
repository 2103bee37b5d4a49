const PRIORITIES = 4;

/** Numbers of propagators that wait to run: a ring a priority, each number once. */
export class PropagationQueue {
  private rings: Int32Array[] = [];
  private readonly head = new Int32Array(PRIORITIES);
  private readonly size = new Int32Array(PRIORITIES);
  private isWaiting = new Uint8Array(0);
  private priority = new Uint8Array(0);
  private mask = 0;

  /** Room for propagators 0..n-1 of the given priorities, none of them waiting. */
  open(priorities: readonly number[]): void {
    let capacity = 1;
    while (capacity < priorities.length + 1) capacity *= 2;
    this.mask = capacity - 1;
    this.rings = Array.from({ length: PRIORITIES }, () => new Int32Array(capacity));
    this.isWaiting = new Uint8Array(priorities.length);
    this.priority = Uint8Array.from(priorities);
  }

  add(id: number): void {
    if (this.isWaiting[id]) return;
    this.isWaiting[id] = 1;
    const q = this.priority[id] as number;
    const size = this.size[q] as number;
    (this.rings[q] as Int32Array)[((this.head[q] as number) + size) & this.mask] = id;
    this.size[q] = size + 1;
  }

  /** The next one, taken out; -1: none waits, or only such of the last priority and those are to be left. */
  take(leavesLast: boolean): number {
    let q = 0;
    while (q < PRIORITIES && this.size[q] === 0) q++;
    if (q === PRIORITIES || (q === PRIORITIES - 1 && leavesLast)) return -1;
    const head = this.head[q] as number;
    const id = (this.rings[q] as Int32Array)[head] as number;
    this.head[q] = (head + 1) & this.mask;
    (this.size[q] as number)--;
    this.isWaiting[id] = 0;
    return id;
  }

  clear(): void {
    for (let q = 0; q < PRIORITIES; q++) {
      const ring = this.rings[q] as Int32Array;
      let head = this.head[q] as number;
      for (let i = this.size[q] as number; i > 0; i--) {
        this.isWaiting[ring[head] as number] = 0;
        head = (head + 1) & this.mask;
      }
      this.head[q] = head;
      this.size[q] = 0;
    }
  }
}
