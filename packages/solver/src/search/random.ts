/** A seeded 32-bit xorshift generator. Same seed, same numbers, on every machine. */
export class Random {
  private state: number;

  constructor(seed: number) {
    this.state = (Math.imul(seed | 0, 0x9e3779b1) ^ 0x2545f491) | 1;
    for (let i = 0; i < 4; i++) this.next();
  }

  /** An integer 0..2^32-1. */
  next(): number {
    let x = this.state;
    x ^= x << 13;
    x ^= x >>> 17;
    x ^= x << 5;
    this.state = x;
    return x >>> 0;
  }
  /** An integer 0..count-1. */
  below(count: number): number {
    return this.next() % count;
  }
  /** In [0, 1). */
  fraction(): number {
    return this.next() / 4294967296;
  }
}
