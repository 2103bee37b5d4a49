/** Variables by how much they took part in recent conflicts: a binary heap, most active first. */
export class ActivityHeap {
  readonly activity: Float64Array;
  /** Per variable: the atom of it that was learned last. */
  readonly lastSide: Int32Array;
  readonly lastBound: Int32Array;
  private increment = 1;
  private readonly heap: Int32Array;
  private readonly position: Int32Array;
  private size = 0;

  constructor(count: number) {
    this.activity = new Float64Array(count);
    this.lastSide = new Int32Array(count).fill(-1);
    this.lastBound = new Int32Array(count);
    this.heap = new Int32Array(count);
    this.position = new Int32Array(count).fill(-1);
  }

  bump(variable: number): void {
    const value = ((this.activity[variable] as number) += this.increment);
    if (value > 1e100) {
      for (let i = 0; i < this.activity.length; i++) (this.activity[i] as number) *= 1e-100;
      this.increment *= 1e-100;
    }
    const at = this.position[variable] as number;
    if (at >= 0) this.up(at);
  }

  decay(factor: number): void {
    this.increment /= factor;
  }

  insert(variable: number): void {
    if ((this.position[variable] as number) >= 0) return;
    this.heap[this.size] = variable;
    this.position[variable] = this.size;
    this.up(this.size++);
  }

  /** The most active variable, taken out; -1 when empty. */
  pop(): number {
    if (this.size === 0) return -1;
    const top = this.heap[0] as number;
    this.position[top] = -1;
    const moved = this.heap[--this.size] as number;
    if (this.size > 0) {
      this.heap[0] = moved;
      this.position[moved] = 0;
      this.down(0);
    }
    return top;
  }

  private up(at: number): void {
    const variable = this.heap[at] as number;
    const value = this.activity[variable] as number;
    let i = at;
    while (i > 0) {
      const parent = (i - 1) >> 1;
      const above = this.heap[parent] as number;
      if ((this.activity[above] as number) >= value) break;
      this.heap[i] = above;
      this.position[above] = i;
      i = parent;
    }
    this.heap[i] = variable;
    this.position[variable] = i;
  }

  private down(at: number): void {
    const variable = this.heap[at] as number;
    const value = this.activity[variable] as number;
    let i = at;
    for (;;) {
      let child = 2 * i + 1;
      if (child >= this.size) break;
      if (
        child + 1 < this.size &&
        (this.activity[this.heap[child + 1] as number] as number) >
          (this.activity[this.heap[child] as number] as number)
      ) {
        child++;
      }
      const below = this.heap[child] as number;
      if ((this.activity[below] as number) <= value) break;
      this.heap[i] = below;
      this.position[below] = i;
      i = child;
    }
    this.heap[i] = variable;
    this.position[variable] = i;
  }
}
