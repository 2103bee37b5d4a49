/** Lists one after the other: those of list i lie from `start[i]` up to `start[i + 1]`. */
export function flatten(lists: readonly (readonly number[])[]): [Int32Array<ArrayBuffer>, Int32Array<ArrayBuffer>] {
  const start = new Int32Array(lists.length + 1);
  lists.forEach((list, i) => {
    start[i + 1] = (start[i] as number) + list.length;
  });
  const ids = new Int32Array(start[lists.length] as number);
  lists.forEach((list, i) => ids.set(list, start[i]));
  return [start, ids];
}
