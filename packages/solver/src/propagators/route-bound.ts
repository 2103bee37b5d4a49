import type { Kernel, Term } from '../engine/kernel.ts';
import { FORBIDDEN } from '../model/model.ts';
import { ReasonedPropagator, sidesOf } from './reasoned.ts';
import type { OrderedMember, OrderedMembers } from './sequence-gaps.ts';

/** Multipliers are kept in this part of a unit. */
const SCALE = 8;
const FAR = 1 << 29;

/**
 * total ≥ cost of a shortest way from the first to the last member through all that are present: the bound of Held and Karp.
 * Least spanning tree under costs c(i,j) + m(i) + m(j), less the multipliers as often as a way would use each member (twice,
 * once for the ends); m by subgradient steps, kept from call to call. c is the closure of the transitions, so that members
 * whose presence is open may lie between. A step i → j is out when j is before i, or a present k is between them; the
 * reason names those outs without which the tree would be cheaper.
 * @source [HELD-KARP-1970]
 */
export class RouteBoundPropagator extends ReasonedPropagator {
  private readonly seq: OrderedMembers;
  private readonly total: Term;
  private readonly first: number;
  private readonly last: number;
  private readonly n: number;
  /** Closed step costs, unscaled. */
  private readonly closed: Int32Array;
  private readonly multiplier: Int32Array;
  private readonly bestMultiplier: Int32Array;
  private readonly isLogged: () => boolean;

  private size = 0;
  private readonly node: Int32Array;
  private readonly words: number;
  private readonly after: Int32Array;
  private readonly before: Int32Array;
  private readonly cost: Int32Array;
  private readonly key: Int32Array;
  private readonly parent: Int32Array;
  private readonly inTree: Uint8Array;
  private readonly degree: Int32Array;
  private readonly orderOfTree: Int32Array;
  private readonly dearest: Int32Array;
  private isPrepared = false;

  constructor(
    kernel: Kernel,
    seq: OrderedMembers,
    total: Term,
    first: number,
    last: number,
    constraint: number,
    isLogged: () => boolean,
  ) {
    super(kernel, constraint, 'route', 3);
    this.seq = seq;
    this.total = total;
    this.first = first;
    this.last = last;
    this.isLogged = isLogged;
    const n = (this.n = seq.members.length);
    this.closed = closure(seq.direct, n);
    this.multiplier = new Int32Array(n);
    this.bestMultiplier = new Int32Array(n);
    this.node = new Int32Array(n);
    this.words = (n + 31) >> 5;
    this.after = new Int32Array(n * this.words);
    this.before = new Int32Array(n * this.words);
    this.cost = new Int32Array(n * n);
    this.key = new Int32Array(n);
    this.parent = new Int32Array(n);
    this.inTree = new Uint8Array(n);
    this.degree = new Int32Array(n);
    this.orderOfTree = new Int32Array(n);
    this.dearest = new Int32Array(n * n);
    const literals: number[] = [];
    for (const { presence } of seq.members) if (presence >= 0) literals.push(presence);
    const sides = [...seq.before].filter((l) => l >= 0);
    for (const l of literals) sides.push(l);
    kernel.post(this, [...sides, ...sidesOf([total], [])]);
  }

  propagate(): boolean {
    this.gather();
    const { size } = this;
    if (size < 4) return true;
    this.price();
    let best = this.tree();
    const known = this.lower(this.total) * SCALE;
    const limit = this.upper(this.total) * SCALE;
    const tries = this.isPrepared ? 1 : 60;
    if (best < FAR && best <= limit) {
      this.bestMultiplier.set(this.multiplier);
      let step = this.isPrepared ? 1 : 8;
      for (let round = 0; round < tries && best <= limit; round++) {
        if (!this.move(step)) break;
        const value = this.tree();
        if (value > best) {
          best = value;
          this.bestMultiplier.set(this.multiplier);
        } else if (step > 1 && round % 4 === 3) step >>= 1;
      }
      this.multiplier.set(this.bestMultiplier);
      this.isPrepared = true;
    }
    if (best <= known) return true;
    const value = this.tree();
    // No way is left at all, or one that costs at least this much.
    const bound = value >= FAR ? this.upper(this.total) + 1 : Math.ceil(value / SCALE);
    if (bound <= this.lower(this.total)) return true;
    this.explainTree();
    return this.raiseAtLeast(this.total, Math.min(bound, this.upper(this.total) + 1));
  }

  /** The present members and, as bits, which of them come after and before each. */
  private gather(): void {
    const { seq, n, node, words, after, before } = this;
    const { store } = this.kernel;
    let size = 0;
    for (let i = 0; i < n; i++) {
      const { presence } = seq.members[i] as OrderedMember;
      if (presence < 0 || store.holds(presence)) node[size++] = i;
    }
    this.size = size;
    after.fill(0);
    before.fill(0);
    for (let a = 0; a < size; a++) {
      for (let b = 0; b < size; b++) {
        if (a === b || !store.holds(seq.before[(node[a] as number) * n + (node[b] as number)] as number)) continue;
        (after[a * words + (b >> 5)] as number) |= 1 << (b & 31);
        (before[b * words + (a >> 5)] as number) |= 1 << (a & 31);
      }
    }
  }

  private isOut(a: number, b: number): boolean {
    const { words, after, before } = this;
    if (((before[a * words + (b >> 5)] as number) >> (b & 31)) & 1) return true;
    for (let w = 0; w < words; w++)
      if (((after[a * words + w] as number) & (before[b * words + w] as number)) !== 0) return true;
    return false;
  }

  /** Cost of each pair of present members as neighbours, in either direction. */
  private price(): void {
    const { size, n, node, closed, cost } = this;
    for (let a = 0; a < size; a++) {
      for (let b = a + 1; b < size; b++) {
        let c = FAR;
        const i = node[a] as number;
        const j = node[b] as number;
        if (!this.isOut(a, b)) c = closed[i * n + j] as number;
        if ((closed[j * n + i] as number) < c && !this.isOut(b, a)) c = closed[j * n + i] as number;
        c = c >= FORBIDDEN ? FAR : c * SCALE;
        cost[a * n + b] = c;
        cost[b * n + a] = c;
      }
    }
  }

  /** Least spanning tree by Prim's method; its value less the multipliers, FAR when there is none. */
  private tree(): number {
    const { size, n, node, cost, key, parent, inTree, degree, multiplier, orderOfTree, first, last } = this;
    inTree.fill(0);
    degree.fill(0);
    for (let a = 0; a < size; a++) key[a] = FAR;
    let value = 0;
    let current = 0;
    inTree[0] = 1;
    orderOfTree[0] = 0;
    parent[0] = -1;
    for (let count = 1; count < size; count++) {
      const m = multiplier[node[current] as number] as number;
      let next = -1;
      let least = FAR;
      for (let b = 0; b < size; b++) {
        if (inTree[b]) continue;
        const c = cost[current * n + b] as number;
        if (c < FAR) {
          const w = c + m + (multiplier[node[b] as number] as number);
          if (w < (key[b] as number)) {
            key[b] = w;
            parent[b] = current;
          }
        }
        if ((key[b] as number) < least) {
          least = key[b] as number;
          next = b;
        }
      }
      if (next < 0) return FAR;
      inTree[next] = 1;
      orderOfTree[count] = next;
      value += least;
      (degree[next] as number)++;
      (degree[parent[next] as number] as number)++;
      current = next;
    }
    for (let a = 0; a < size; a++) {
      const i = node[a] as number;
      value -= (i === first || i === last ? 1 : 2) * (multiplier[i] as number);
    }
    return value;
  }

  /** One subgradient step: members the tree uses too often become dearer. False: the tree is a way already. */
  private move(step: number): boolean {
    const { size, node, degree, multiplier, first, last } = this;
    let isMoved = false;
    for (let a = 0; a < size; a++) {
      const i = node[a] as number;
      const excess = (degree[a] as number) - (i === first || i === last ? 1 : 2);
      if (excess === 0) continue;
      isMoved = true;
      multiplier[i] = (multiplier[i] as number) + step * excess;
    }
    return isMoved;
  }

  private explainTree(): void {
    const { size, n, node, closed, multiplier, key, parent, orderOfTree, inTree, seq } = this;
    this.noPremises();
    for (let a = 0; a < size; a++) {
      const { presence } = seq.members[node[a] as number] as OrderedMember;
      if (presence >= 0) this.premiseLiteral(presence);
    }
    // Dearest edge on the tree's way between each pair; pairs the tree does not join count as infinitely far.
    const dearest = this.dearest;
    dearest.fill(FAR, 0, size * size);
    const joined = countOf(inTree);
    for (let x = 1; x < joined; x++) {
      const b = orderOfTree[x] as number;
      for (let y = 0; y < x; y++) {
        const u = orderOfTree[y] as number;
        const p = parent[b] as number;
        const d = u === p ? (key[b] as number) : Math.max(dearest[p * size + u] as number, key[b] as number);
        dearest[b * size + u] = d;
        dearest[u * size + b] = d;
      }
    }
    for (let a = 0; a < size; a++) {
      for (let b = 0; b < size; b++) {
        if (a === b) continue;
        const i = node[a] as number;
        const j = node[b] as number;
        const c = closed[i * n + j] as number;
        if (c >= FORBIDDEN || !this.isOut(a, b)) continue;
        const w = c * SCALE + (multiplier[i] as number) + (multiplier[j] as number);
        if (w < (dearest[a * size + b] as number)) this.explainOut(a, b);
      }
    }
    if (!this.isLogged()) return;
    this.argue(SCALE);
    for (const value of multiplier) this.argue(value);
  }

  private explainOut(a: number, b: number): void {
    const { words, after, before } = this;
    const back = this.order(b, a);
    if (this.kernel.store.holds(back)) return this.premiseLiteral(back);
    for (let w = 0; w < words; w++) {
      const common = (after[a * words + w] as number) & (before[b * words + w] as number);
      if (common === 0) continue;
      const k = w * 32 + (31 - Math.clz32(common & -common));
      this.premiseLiteral(this.order(a, k));
      this.premiseLiteral(this.order(k, b));
      return;
    }
  }

  private order(a: number, b: number): number {
    const { n, node, seq } = this;
    return seq.before[(node[a] as number) * n + (node[b] as number)] as number;
  }
}

function countOf(flags: Uint8Array): number {
  let count = 0;
  for (const flag of flags) count += flag;
  return count;
}

/** Shortest transitions through any members, their durations left out. */
function closure(direct: Int32Array, n: number): Int32Array {
  const closed = Int32Array.from(direct);
  for (let k = 0; k < n; k++) {
    for (let i = 0; i < n; i++) {
      const first = closed[i * n + k] as number;
      if (i === k || first >= FORBIDDEN) continue;
      for (let j = 0; j < n; j++) {
        const rest = closed[k * n + j] as number;
        if (j === i || j === k || rest >= FORBIDDEN) continue;
        if (first + rest < (closed[i * n + j] as number)) closed[i * n + j] = first + rest;
      }
    }
  }
  return closed;
}
