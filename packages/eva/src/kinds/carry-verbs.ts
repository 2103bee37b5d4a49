/**
 * The verbs of every loose piece: it goes from hand to hand, to a place, into a bag. They move the holder; a kind with a
 * seating aspect also says which value each of them leaves.
 */
import { defineVerb } from './define-verb.ts';
import type { Verb } from './kind.ts';

/** For small pieces without a state of their own: tools, bags, restraints, tethers. */
export const CARRY_VERBS: readonly Verb[] = [
  defineVerb('take', 'Take {object}, tethered to you first', [15, 25, 50], { carry: 'take' }),
  defineVerb('put', 'Put {object}, tethered there before you let go', [15, 30, 60], { carry: 'put' }),
  defineVerb('stow', 'Stow {object}', [20, 40, 80], { carry: 'stow', closing: true }),
  defineVerb('hand-over', 'Hand over {object}; the other calls "mine" first', [15, 30, 60], { carry: 'hand-over' }),
  defineVerb('check', 'Check {object}', [10, 20, 40]),
];

/** Values of a piece that is fitted to the vehicle, and how each may be left. */
export const SEATING_VALUES = ['fastened', 'held', 'seated', 'free', 'parked', 'stowed'] as const;
export const SEATING = { fastened: 'fastened', seated: 'seated', inPlace: ['seated', 'held', 'fastened'] } as const;
export const SEATING_SAFE = {
  fastened: 'always',
  held: 'tonight',
  seated: 'never',
  free: 'never',
  parked: 'tonight',
  stowed: 'always',
} as const;

/**
 * For pieces that are fitted and taken off (boxes, trays, panels, lamps). `take` asks for a value other than fastened only
 * where the campaign names no fasteners; where it does, the fasteners themselves are asked.
 *
 * @param aspect id of the seating aspect
 * @param effort of handling it
 * @param times low, likely, high seconds of taking it out and of seating it
 */
export function fittedVerbs(
  aspect: string,
  effort: Verb['effort'],
  times: { readonly take: readonly [number, number, number]; readonly seat: readonly [number, number, number] },
): readonly Verb[] {
  const loose = ['held', 'seated', 'free', 'parked', 'stowed'];
  const inHand = ['free', 'parked', 'stowed'];
  return [
    defineVerb('take', 'Take {object} out, tethered to you first', times.take, {
      aspect,
      needs: loose,
      leaves: 'free',
      carry: 'take',
      effort,
    }),
    defineVerb('put', 'Put {object}, tethered there before you let go', [30, 60, 120], {
      aspect,
      needs: inHand,
      leaves: 'parked',
      carry: 'put',
      effort,
      closing: true,
    }),
    defineVerb('stow', 'Stow {object}', [40, 90, 180], {
      aspect,
      needs: inHand,
      leaves: 'stowed',
      carry: 'stow',
      effort,
      closing: true,
    }),
    defineVerb('hand-over', 'Hand over {object}; the other calls "mine" first', [30, 60, 120], {
      aspect,
      leaves: 'free',
      carry: 'hand-over',
      effort,
    }),
    defineVerb('seat', 'Seat {object} on its guides', times.seat, {
      aspect,
      leaves: 'seated',
      carry: 'seat',
      effort,
      voice: true,
    }),
    defineVerb('unseat', 'Draw {object} off its guides', times.take, {
      aspect,
      needs: ['held', 'seated'],
      leaves: 'free',
      carry: 'unseat',
      effort,
    }),
    defineVerb('secure', 'Confirm {object} hard down, all fasteners fast', [15, 30, 60], {
      aspect,
      needs: SEATING.inPlace,
      leaves: 'fastened',
    }),
    // What terminate does with a piece that stands on its guides with no fastener fast.
    defineVerb('make-fast', 'Make {object} fast for the night, two fasteners or a strap', [120, 240, 480], {
      aspect,
      needs: ['seated'],
      leaves: 'held',
      effort: 'moderate',
      closing: true,
    }),
    ...RETAIN_VERBS,
    defineVerb('inspect', 'Inspect {object}', [20, 40, 90]),
    defineVerb('photograph', 'Photograph {object}', [15, 30, 60]),
  ];
}

/** Something holds the piece before its last fastener lets go. */
export const RETAIN_VERBS: readonly Verb[] = [
  defineVerb('tether', 'Tether {object}', [15, 30, 60], { aspect: 'retainer', leaves: 'tethered' }),
  defineVerb('untether', 'Take the tether off {object}', [10, 20, 45], {
    aspect: 'retainer',
    needs: ['tethered'],
    leaves: 'none',
  }),
  defineVerb('grip', 'Grip {object}', [30, 60, 150], { aspect: 'retainer', leaves: 'gripped', voice: true }),
  defineVerb('let-go', 'Let go of {object}', [15, 30, 60], {
    aspect: 'retainer',
    needs: ['gripped'],
    leaves: 'none',
    voice: true,
  }),
];
