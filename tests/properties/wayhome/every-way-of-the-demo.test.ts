/**
 * Every way home that the demo prints is walked by the second, small walker: as planned at each change, terminate and abort, the
 * arm moving. What is open at the beginning is read off the plan's own writes; what is left at the end is held against the kinds.
 */
import type { Hardware } from '@handrail/eva/campaign/campaign';
import { standardLibrary } from '@handrail/eva/kinds/kinds-library';
import { wayHomeSurface } from '@handrail/eva/wayhome/way-home-surface';
import { expect, test } from 'vitest';
import { plannedFulmar } from '../../support/planned-fulmar.ts';
import { walkHome } from './walk-home.ts';

const { campaign, hardware, timeline } = plannedFulmar();
const pieces = new Map(campaign.hardware.map((piece) => [piece.id, piece] as const));
const ofSeat = (piece: Hardware): readonly Hardware[] => campaign.hardware.filter(({ of }) => of === piece.id);

/** "place:mast-foot", or a piece of hardware that stands at a place. */
function placeOf(holder: string): string | null {
  const id = holder.slice(holder.indexOf(':') + 1);
  if (holder.startsWith('place:')) return id;
  const under = pieces.get(id);
  return under?.at.kind === 'place' ? under.at.id : null;
}

/** For a night: what the kind says of the value of its first aspect. */
function mayStay(kind: string, value: string): boolean {
  const safe = standardLibrary.kinds.get(kind)?.aspects[0]?.safe[value];
  return safe === undefined || safe !== 'never';
}

test.each(timeline.evas.map((eva) => [eva.eva, eva] as const))('EVA %s', (_, eva) => {
  const surface = wayHomeSurface(campaign, hardware, standardLibrary, timeline, eva);
  const { progress } = surface;
  let walked = 0;
  for (const { petS, planned } of surface.samples) {
    const now = progress.at(petS);
    const state = progress.state(
      now,
      now.map(({ index }) => index),
      petS,
      'alive',
      'high',
    );
    const open = new Map<string, string>();
    for (const [variable, by] of state.writtenBy) {
      const piece = pieces.get(variable);
      // In somebody's hands it comes home with them; a piece that stands with no fastener fast is what its fasteners make it.
      const isHeld = (state.values.get(`${variable}.holder`) ?? '').startsWith('person:');
      if (piece === undefined || by === '' || isHeld || ofSeat(piece).length > 0) continue;
      open.set(variable, state.values.get(variable) ?? '');
    }
    const moved = new Map(
      [...state.values].flatMap(([variable, value]) =>
        variable.endsWith('.holder') ? [[variable.slice(0, -'.holder'.length), placeOf(value)] as const] : [],
      ),
    );
    for (const mode of ['terminate', 'abort'] as const) {
      const way = planned[mode];
      if (way.totalS === null) continue;
      const at = new Map(
        way.people.map(({ person, steps }) => {
          const segment = now.find((one) => one.person === person);
          const first = steps.find(({ kind }) => kind === 'travel' || kind === 'close' || kind === 'hatch');
          // On a rail, or on a plate under way, they begin at the end of it that they go to.
          const begin = segment?.rail === null && segment.onArm === null ? segment.place : (first?.from ?? '');
          return [person, begin] as const;
        }),
      );
      const isSafe = mode === 'terminate' ? mayStay : () => true;
      const wrong = walkHome(campaign, way, { at, open, moved }, isSafe);
      expect(wrong, `${mode} at ${petS}: ${way.words}`).toEqual([]);
      walked++;
      if (mode === 'abort' || !way.people.some(({ steps }) => steps.some(({ kind }) => kind === 'close'))) continue;
      // Without what it closes it does not pass.
      const people = way.people.map((one) => ({ ...one, steps: one.steps.filter(({ kind }) => kind !== 'close') }));
      expect(walkHome(campaign, { ...way, people }, { at, open, moved }, isSafe)).not.toEqual([]);
    }
  }
  expect(walked).toBeGreaterThan(50);
});
