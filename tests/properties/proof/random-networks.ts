/** Small random networks and plans from a seed. */
export function randomFrom(seed: number): (below: number) => number {
  let state = (seed * 2654435761 + 12345) >>> 0;
  return (below) => {
    // mulberry32
    state = (state + 0x6d2b79f5) >>> 0;
    let mixed = state;
    mixed = Math.imul(mixed ^ (mixed >>> 15), mixed | 1);
    mixed ^= mixed + Math.imul(mixed ^ (mixed >>> 7), mixed | 61);
    return ((mixed ^ (mixed >>> 14)) >>> 0) % below;
  };
}
