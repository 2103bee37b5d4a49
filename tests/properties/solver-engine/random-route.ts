import { ModelBuilder, endOf } from '@handrail/solver/model/build-model';
import { FORBIDDEN, type IntervalId, type Model, type SequenceMember } from '@handrail/solver/model/model';
import { Dice } from './random-model.ts';

/** One person who goes out, does some things at places, some of them optional, and comes back: enough members for route bounds. */
export function randomRoute(seed: number): Model {
  const dice = new Dice(seed);
  const b = new ModelBuilder(`route ${seed}`, dice.between(6, 8));
  const places = dice.between(2, 4);
  const transitions = Array.from({ length: places * places }, (_, x) =>
    x % (places + 1) === 0 ? 0 : dice.chance(10) ? FORBIDDEN : dice.between(0, 3),
  );
  const out = b.interval('out', 0, { endMax: 0 });
  const home = b.interval('home', 0);
  const members: SequenceMember[] = [out, home].map((interval) => ({ interval, startType: 0, endType: 0 }));
  const count = dice.between(2, 3);
  const values: { coefficient: number; variable: number }[] = [];
  for (let i = 0; i < count; i++) {
    const presence = dice.chance(40) ? b.boolean(`does ${i}`) : null;
    const interval: IntervalId = b.interval(`work ${i}`, dice.between(0, 2), {
      presence,
      startMin: dice.between(0, 1),
    });
    members.push({ interval, startType: dice.roll(places), endType: dice.roll(places) });
    if (presence !== null) values.push({ coefficient: -dice.between(1, 3), variable: presence.variable });
  }
  const total = dice.chance(60) ? b.variable('total', 0, 8) : null;
  b.post({
    kind: 'sequence',
    tag: null,
    members,
    types: places,
    transitions,
    first: out,
    last: home,
    transitionTotal: total,
  });
  const early = members[2] as SequenceMember;
  const late = members[3] as SequenceMember;
  if (dice.chance(40)) {
    b.post({
      kind: 'precedence',
      tag: null,
      from: endOf(early.interval),
      to: endOf(late.interval),
      lag: dice.between(0, 2),
      when: [],
    });
  }
  b.minimise('value', { terms: values, constant: 0 });
  b.minimise('home', { terms: [{ coefficient: 1, variable: b.intervalAt(home).start }], constant: 0 });
  if (total !== null) b.minimise('total', { terms: [{ coefficient: 1, variable: total }], constant: 0 });
  return b.build();
}
