/** Transition types of a lane: whatever matters between two neighbours, each combination once. */
export class LaneTypes<T> {
  private readonly indexOf = new Map<string, number>();
  private readonly known: T[] = [];
  private readonly keyOf: (type: T) => string;

  constructor(keyOf: (type: T) => string) {
    this.keyOf = keyOf;
  }

  index(type: T): number {
    const key = this.keyOf(type);
    let index = this.indexOf.get(key);
    if (index === undefined) {
      index = this.known.push(type) - 1;
      this.indexOf.set(key, index);
    }
    return index;
  }

  /** Row-major table over the types seen. */
  table(transition: (from: T, to: T) => number): { types: number; transitions: number[] } {
    const transitions = this.known.flatMap((from) => this.known.map((to) => transition(from, to)));
    return { types: this.known.length, transitions };
  }
}
