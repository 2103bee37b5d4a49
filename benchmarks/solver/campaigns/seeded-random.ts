/** A small seeded generator (xorshift, 32 bits): the same numbers on every machine; nothing here hangs on their quality. */
export class SeededRandom {
  private state: number;

  constructor(seed: number) {
    this.state = Math.imul(seed + 1, 0x9e3779b1) | 1;
    for (let i = 0; i < 4; i++) this.upTo(1);
  }

  /** An integer from 0 to n. */
  upTo(n: number): number {
    this.state ^= this.state << 13;
    this.state ^= this.state >>> 17;
    this.state ^= this.state << 5;
    return (this.state >>> 0) % (n + 1);
  }

  between(min: number, max: number): number {
    return min + this.upTo(max - min);
  }

  chance(percent: number): boolean {
    return this.upTo(99) < percent;
  }

  pick<T>(from: readonly T[]): T {
    return from[this.upTo(from.length - 1)] as T;
  }
}
