/**
 * A second, simplest reading of the sentences: one crew carries them out one after another on the values as they are, and
 * stops at the first that cannot be done. It knows one worksite and its few pieces by heart and shares nothing with the
 * inference: no needs, no leaves, no library.
 */
export type World = Map<string, string>;

export interface Sentence {
  readonly verb: string;
  readonly objects: readonly string[];
  readonly from?: string;
  readonly to?: string;
  readonly by?: 'partner';
}

export function sentenceText({ verb, objects, from, to, by }: Sentence): string {
  return [
    verb,
    ...objects,
    from === undefined ? '' : `from=${from}`,
    to === undefined ? '' : `to=${to}`,
    by === undefined ? '' : `by=${by}`,
  ]
    .filter(Boolean)
    .join(' ');
}

const IN_PLACE = ['seated', 'held', 'fastened'];

/** @returns the world after the stint; null when some sentence cannot be carried out */
export function carryOut(
  sentences: readonly Sentence[],
  start: World,
  takenSomewhere: ReadonlySet<string>,
): World | null {
  const world = new Map(start);
  const bolted = new Map<string, string>();
  for (const sentence of sentences) {
    let boltChanged = false;
    for (const object of sentence.objects) {
      if (!carryOutOne(world, sentence, object, takenSomewhere)) return null;
      if (/^b\d$/.test(object) && ['release', 'start', 'drive'].includes(sentence.verb)) {
        bolted.set(object, world.get(object) as string);
        boltChanged = true;
      }
    }
    // The crew sees the crate fastened, or loose on its guides, when it has worked on both of its bolts.
    if (boltChanged && bolted.size === 2) {
      const values = new Set(bolted.values());
      if (values.size === 1 && values.has('torqued')) world.set('crate', 'fastened');
      if (values.size === 1 && values.has('released')) world.set('crate', 'seated');
    }
  }
  return world;
}

function carryOutOne(world: World, sentence: Sentence, object: string, takenSomewhere: ReadonlySet<string>): boolean {
  const is = (variable: string, ...values: readonly string[]): boolean =>
    values.includes(world.get(variable) as string);
  const become = (variable: string, value: string): true => {
    world.set(variable, value);
    return true;
  };
  const hands = sentence.by === 'partner' ? 'person:EV2' : 'person:EV1';
  const holder = `${object}.holder`;
  const crateHere = (): boolean => inReach(world, 'crate');
  const free = (): boolean => is('b1', 'released') && is('b2', 'released') && is('j1', 'demated');
  switch (sentence.verb) {
    case 'open':
      return is('lid', 'closed') && become('lid', 'open');
    case 'close':
      return is('lid', 'open') && become('lid', 'closed');
    case 'release':
      return crateHere() && is(object, 'torqued', 'started') && become(object, 'released');
    case 'start':
      return crateHere() && is('crate', ...IN_PLACE) && is(object, 'released') && become(object, 'started');
    case 'drive':
      return crateHere() && is('crate', ...IN_PLACE) && is(object, 'released', 'started') && become(object, 'torqued');
    case 'demate':
      return crateHere() && is('j1', 'mated') && become('j1', 'demated');
    case 'mate':
      return crateHere() && is('crate', ...IN_PLACE) && is('j1', 'demated') && become('j1', 'mated');
    case 'tether':
      return crateHere() && become('crate.retainer', 'tethered');
    case 'untether':
      return crateHere() && is('crate.retainer', 'tethered') && become('crate.retainer', 'none');
    case 'make-fast':
      return crateHere() && is('crate', 'seated') && become('crate', 'held');
    case 'secure':
      return (
        crateHere() &&
        is('b1', 'torqued') &&
        is('b2', 'torqued') &&
        is('crate', ...IN_PLACE) &&
        become('crate', 'fastened')
      );
    case 'inspect':
    case 'check':
      return inReach(world, object);
    default:
      break;
  }
  // Carrying. Where it comes from:
  const target = sentence.to !== undefined ? targetOf(sentence.to) : sentence.verb === 'take' ? hands : 'place:bay';
  const taking = sentence.verb === 'take' || !takenSomewhere.has(object);
  if (taking) {
    if (sentence.from !== undefined && !is(holder, targetOf(sentence.from))) return false;
    if (!inReach(world, object) || (sentence.verb !== 'take' && is(holder, target))) return false;
    if (object === 'crate' && !free()) return false;
  } else {
    if (!is(holder, hands)) return false;
    if (
      object === 'crate' &&
      sentence.verb !== 'seat' &&
      sentence.verb !== 'hand-over' &&
      !is('crate', 'free', 'parked', 'stowed')
    ) {
      return false;
    }
  }
  // Where it goes:
  if (target === 'hardware:sack' && !inReach(world, 'sack')) return false;
  world.set(holder, target);
  if (object === 'crate')
    world.set(
      'crate',
      { take: 'free', 'hand-over': 'free', put: 'parked', stow: 'stowed', seat: 'seated' }[sentence.verb] as string,
    );
  return true;
}

function targetOf(id: string): string {
  if (id === 'EV1' || id === 'EV2') return `person:${id}`;
  return id === 'bay' ? 'place:bay' : `hardware:${id}`;
}

/** Both people work at the bay; the sack may be elsewhere. */
function inReach(world: World, piece: string): boolean {
  let at = world.get(`${piece}.holder`) as string;
  for (let depth = 0; depth < 5 && at === 'hardware:sack'; depth++) at = world.get('sack.holder') as string;
  return ['person:EV1', 'person:EV2', 'place:bay', 'hardware:rack'].includes(at);
}
