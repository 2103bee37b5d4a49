import { Fault } from '@handrail/quantity/fault';
import { buildKindsLibrary, type KindsLibrary, verbOf } from './kinds-library.ts';

/** One reviewed figure: seconds for one piece at pace 1, 10th, 50th and 90th percentile, and where it comes from. */
export interface RevisedTime {
  readonly kind: string;
  readonly verb: string;
  readonly timeS: { readonly low: number; readonly likely: number; readonly high: number };
  /** Absent: as before. */
  readonly perTurnS?: number;
  readonly source: string;
}

/**
 * A library under another id and version with an operator's own times in place of the planning figures; everything else
 * stays. The library that it is made from is not changed.
 *
 * @throws Fault `kinds/no-such-verb` for a kind or verb that the library does not have; `kinds/times-out-of-order` unless
 * 0 < low ≤ likely ≤ high and turns take time; `kinds/version-twice` when id and version are those of the old library
 */
export function reviseTimes(
  library: KindsLibrary,
  id: string,
  version: string,
  times: readonly RevisedTime[],
): KindsLibrary {
  if (id === library.id && version === library.version) {
    throw new Fault('kinds/version-twice', `${id} ${version} is the library that is revised`, {
      advice: 'give the revised library a version of its own: campaigns are pinned to it',
    });
  }
  const revised = new Map<string, RevisedTime>();
  for (const time of times) {
    const { low, likely, high } = time.timeS;
    if (verbOf(library, time.kind, time.verb) === null) {
      throw new Fault('kinds/no-such-verb', `kind ${time.kind} has no verb ${time.verb}`, { values: { ...time } });
    }
    if (!(low > 0 && low <= likely && likely <= high && high < Infinity) || (time.perTurnS ?? 1) <= 0) {
      throw new Fault('kinds/times-out-of-order', `${time.kind} ${time.verb}: ${low} s, ${likely} s, ${high} s`, {
        values: { ...time },
        advice: 'low, likely, high: above 0 and in that order',
      });
    }
    revised.set(`${time.kind} ${time.verb}`, time);
  }
  const kinds = [...library.kinds.values()].map((kind) => ({
    ...kind,
    verbs: kind.verbs.map((verb) => {
      const time = revised.get(`${kind.id} ${verb.id}`);
      if (time === undefined) return verb;
      return { ...verb, timeS: time.timeS, perTurnS: time.perTurnS ?? verb.perTurnS, source: time.source };
    }),
  }));
  return buildKindsLibrary(id, version, kinds);
}
