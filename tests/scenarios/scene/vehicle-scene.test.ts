/** The vehicle at any second of the demo's plan, against the second readings of the same plan: the kit's inventory, the moves, the night window. */
import { heldAt, inventory, outermostHolder } from '@handrail/eva/kit/inventory';
import { vehicleScene } from '@handrail/eva/scene/vehicle-scene';
import { distance, type Vector3 } from '@handrail/quantity/vector';
import { describe, expect, test } from 'vitest';
import { plannedFulmar } from '../../support/planned-fulmar.ts';

const { campaign, hardware, timeline } = plannedFulmar();
const place = new Map(campaign.vehicle.places.map(({ id, positionM }) => [id, positionM as Vector3]));

describe.each(timeline.evas.map((eva) => [eva.eva, eva] as const))('the scene of EVA %s', (id, eva) => {
  const scene = vehicleScene(campaign, hardware, timeline, id);
  if (scene === null) throw new Error('the demo flies it');
  const minutes = Array.from({ length: Math.floor(eva.bothInS / 60) }, (_, minute) => minute * 60);

  test('has every loose piece with the holder that the inventory gives it, at every minute', () => {
    const kit = inventory(campaign, hardware, timeline).find((one) => one.eva === id);
    if (kit === undefined) throw new Error('no inventory');
    let compared = 0;
    for (const petS of minutes) {
      const held = heldAt(kit, petS);
      for (const item of scene.at(petS).items) {
        if (!held.has(item.id) || held.get(item.id)?.includes('in work') === true) continue;
        const outermost = outermostHolder(held, item.id);
        // The inventory follows loose pieces only; a socket or box that a chain ends at stands at its own place.
        if (outermost.startsWith('hardware:')) continue;
        expect([petS, item.id, item.outermost]).toEqual([petS, item.id, outermost]);
        compared++;
      }
    }
    expect(compared).toBeGreaterThan(1000);
  });

  test('has everybody on the straight way of their move, in proportion to its time', () => {
    for (const move of eva.moves) {
      const [from, to] = [place.get(move.path[0] ?? ''), place.get(move.path[1] ?? '')];
      if (campaign.people.every((person) => person.id !== move.who) || from === undefined || to === undefined) continue;
      if (move.path.length !== 2) continue;
      const middle = scene.at((move.startS + move.endS) / 2).people.find((person) => person.id === move.who);
      expect(middle).toBeDefined();
      const at = middle?.positionM as Vector3;
      expect(distance(from, at)).toBeCloseTo(distance(at, to), 6);
      expect(distance(from, at) + distance(at, to)).toBeCloseTo(distance(from, to), 6);
    }
  });

  test('has nobody away from structure and no tether that starts elsewhere than at its anchor', () => {
    for (const petS of minutes) {
      for (const person of scene.at(petS).people) {
        const anchor = campaign.people.find((one) => one.id === person.id)?.startAnchor;
        expect(anchor).not.toBeNull();
        if (person.tetherM === null) continue;
        expect(person.tetherM.at(-1)).toEqual(person.positionM);
        expect(person.tetherM.length).toBeGreaterThan(1);
      }
    }
  });

  test('is dark when the plan’s computed night says so, and its Sun is a direction', () => {
    const night = campaign.windows.find((window) => window.computed?.what === 'night');
    expect(night).toBeDefined();
    const edgeMs = 60_000;
    for (const petS of minutes) {
      const { utcMs, isNight, sunDirection } = scene.at(petS);
      const edges = night?.intervals.flat() ?? [];
      if (edges.some((edge) => Math.abs(edge - utcMs) < edgeMs)) continue;
      expect([petS, isNight]).toEqual([petS, night?.intervals.some(([from, to]) => from <= utcMs && utcMs < to)]);
      expect(Math.hypot(...(sunDirection as Vector3))).toBeCloseTo(1, 9);
    }
  });
});

test('a rail is drawn closed exactly while its joint is not as it must be', () => {
  const scene = vehicleScene(campaign, hardware, timeline, 'harvest');
  const rails = campaign.vehicle.rails.filter((rail) => rail.openWhile.length > 0);
  expect(rails.length).toBeGreaterThan(0);
  for (const rail of scene?.at(0).rails ?? []) {
    expect(rail.closedBecause === null).toBe(rail.isOpen);
    if (!rails.some(({ id }) => id === rail.id)) expect(rail.isOpen).toBe(true);
  }
});

test('an EVA that is not in the timeline has no scene', () => {
  expect(vehicleScene(campaign, hardware, timeline, 'nowhere')).toBeNull();
});
