/** A binary heap of (key, item) by least key. Entries that have been overtaken stay in it; the caller skips them. */
export class EventQueue {
  private readonly keys: number[] = [];
  private readonly items: number[] = [];

  get size(): number {
    return this.keys.length;
  }

  push(key: number, item: number): void {
    const { keys, items } = this;
    let at = keys.length;
    keys.push(key);
    items.push(item);
    while (at > 0) {
      const above = (at - 1) >> 1;
      if ((keys[above] as number) <= key) break;
      keys[at] = keys[above] as number;
      items[at] = items[above] as number;
      at = above;
    }
    keys[at] = key;
    items[at] = item;
  }

  /** Takes the least out and writes it to `top`; false when empty. */
  readonly top = { key: 0, item: 0 };
  pop(): boolean {
    const { keys, items, top } = this;
    const lastKey = keys.pop();
    const lastItem = items.pop();
    if (lastKey === undefined || lastItem === undefined) return false;
    if (keys.length === 0) {
      top.key = lastKey;
      top.item = lastItem;
      return true;
    }
    top.key = keys[0] as number;
    top.item = items[0] as number;
    let at = 0;
    for (;;) {
      let below = 2 * at + 1;
      if (below >= keys.length) break;
      if (below + 1 < keys.length && (keys[below + 1] as number) < (keys[below] as number)) below++;
      if ((keys[below] as number) >= lastKey) break;
      keys[at] = keys[below] as number;
      items[at] = items[below] as number;
      at = below;
    }
    keys[at] = lastKey;
    items[at] = lastItem;
    return true;
  }
}
