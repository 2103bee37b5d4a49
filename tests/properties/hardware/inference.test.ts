import type { Campaign, Step } from '@handrail/eva/campaign/campaign';
import type { HardwareModel } from '@handrail/eva/hardware/effects';
import { inferHardware } from '@handrail/eva/hardware/infer-hardware';
import { standardLibrary } from '@handrail/eva/kinds/kinds-library';
import * as fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { readText } from '../../scenarios/hardware/read-text.ts';

/** A bit of everything: bags in bags, a swap, a restraint that moves, the arm, a partner for part, exceptions, gaps. */
const TEXT = `
hardware s1 kind=socket at=bay
hardware s2 kind=socket at=deck
hardware r1 kind=foot-restraint at=s2
hardware rack kind=bay at=bay
hardware crate kind=box at=rack load=large state=fastened { state retainer none }
hardware spare kind=box at=sack load=large state=stowed { state retainer none }
hardware b1 b2 kind=bolt of=crate at=bay state=torqued torque="20 N·m" turns=8
hardware b3 b4 kind=captive-fastener of=spare at=bay state=released torque="20 N·m" turns=8
hardware j1 kind=power-connector of=crate at=bay state=mated controls=bus-off
hardware j2 kind=power-connector of=spare at=bay state=demated
hardware q1 kind=fluid-connector at=bay state=mated controls=loop-vented { state valve open }
hardware lid kind=cover at=bay state=closed
hardware flap kind=cover at=deck
hardware sack kind=bag at=EV2
hardware pouch kind=bag at=sack
hardware probe kind=hand-tool at=pouch
hardware driver kind=power-tool at=EV1 { property torque-most "30 N·m" }
hardware wrench kind=ratchet at=EV2 { property torque-most "10 N·m" }
task move rank=1 {
    stint fetch who=EV1 at=deck { unseat r1; open flap }
    stint set who=EV1 at=bay { seat r1; adjust r1 }
}
task swap rank=2 {
    stint loose who=EV1 at=bay restraint=r1 {
        open lid
        close-valve q1
        demate j1 q1
        release b1
        tether crate
        release b2
        need flap open when=during
        leave lid open at=end
    }
    stint out who=EV1 at=bay restraint=r1 arm=crane pose=crane-bay {
        take crate
        hand-over crate to=crane
    }
    stint in who=EV1 at=bay restraint=r1 {
        with EV2 at=bay { take spare by=partner; hand-over spare to=EV1 by=partner }
        seat spare in=rack
        drive b3 b4
        mate j2
        under bus-off
    }
    stint check who=any at=bay { take probe from=pouch; check probe; inspect spare; stow probe in=pouch }
}
`;

const withoutPlaces = (value: unknown): unknown =>
  JSON.parse(
    JSON.stringify(value instanceof Map ? [...value] : value, (key, inner: unknown) =>
      key === 'span' || key === 'title' ? undefined : inner instanceof Map ? [...inner] : inner,
    ),
  );
const modelData = (model: HardwareModel): unknown => withoutPlaces({ v: [...model.variables], e: [...model.effects] });

function deepFreeze<T>(value: T): T {
  if (typeof value === 'object' && value !== null && !Object.isFrozen(value)) {
    Object.freeze(value);
    for (const inner of Object.values(value)) deepFreeze(inner);
  }
  return value;
}

test('the inference changes nothing in the campaign and gives the same answer twice', () => {
  const campaign = deepFreeze(readText(TEXT).campaign);
  const first = inferHardware(campaign, standardLibrary);
  const second = inferHardware(campaign, standardLibrary);
  expect(modelData(second)).toEqual(modelData(first));
  expect(first.effects.size).toBe(campaign.tasks.flatMap((task) => task.stints).length);
});

describe('names', () => {
  const IDS = 's1 s2 r1 rack crate spare b1 b2 b3 b4 j1 j2 q1 lid flap sack pouch probe driver wrench'.split(' ');
  const rename = (text: string, names: ReadonlyMap<string, string>): string =>
    text.replace(/[A-Za-z][A-Za-z0-9-]*/g, (word) => names.get(word) ?? word);

  test('other names for the hardware give the same states under the other names', () => {
    const before = modelData(readText(TEXT).model);
    fc.assert(
      fc.property(
        fc.uniqueArray(fc.stringMatching(/^[a-z]{3,8}$/), { minLength: IDS.length, maxLength: IDS.length }),
        (fresh) => {
          const names = new Map(IDS.map((id, index) => [id, `x-${fresh[index] as string}`]));
          const after = modelData(readText(rename(TEXT, names)).model);
          expect(JSON.stringify(after)).toBe(rename(JSON.stringify(before), names));
        },
      ),
      { numRuns: 40, seed: 5 },
    );
  });
});

test('hardware that no step names changes nothing', () => {
  const before = modelData({ variables: new Map(), effects: readText(TEXT).model.effects });
  fc.assert(
    fc.property(fc.constantFrom('cover', 'latch', 'tether', 'bag', 'bay', 'box', 'hand-tool', 'cutter'), (kind) => {
      const more = readText(`${TEXT}hardware extra kind=${kind} at=tip\n`).model;
      expect(modelData({ variables: new Map(), effects: more.effects })).toEqual(before);
    }),
    { numRuns: 8 },
  );
});

describe('every state that is inferred', () => {
  const { campaign, model } = readText(TEXT);

  test('belongs to a step that names its piece, or something that belongs to it or holds it', () => {
    let checked = 0;
    for (const stint of campaign.tasks.flatMap((task) => task.stints)) {
      const effects = model.effects.get(stint.key);
      for (const { variable, origin } of [...(effects?.needs ?? []), ...(effects?.leaves ?? [])]) {
        const piece = model.variables.get(variable)?.of;
        expect(piece, variable).toBeDefined();
        if (origin.step === null) continue;
        const step = stint.steps[origin.step];
        expect(step).toBeDefined();
        expect(
          related(campaign, model, piece as string, step as Step),
          `${stint.key} ${origin.words} ${variable}`,
        ).toBe(true);
        checked++;
      }
    }
    expect(checked).toBeGreaterThan(40);
  });

  test('has values that its variable can take', () => {
    for (const [key, effects] of model.effects) {
      const roles = campaign.tasks.flatMap((task) => task.stints).find((stint) => stint.key === key)?.roles ?? [];
      const values = (raw: string): readonly string[] => {
        if (!raw.startsWith('role:')) return [raw];
        const role = roles[Number(raw.slice(5))];
        expect(role).toBeDefined();
        return (role?.candidates ?? []).map((id) => `person:${id}`);
      };
      for (const leave of effects.leaves) {
        expect(model.variables.get(leave.variable)?.values).toEqual(expect.arrayContaining([...values(leave.value)]));
        expect(leave.step).toBeGreaterThanOrEqual(-1);
      }
      for (const need of effects.needs) {
        expect(need.allowed.length).toBeGreaterThan(0);
        const known = model.variables.get(need.variable)?.values ?? [];
        expect(
          need.allowed.flatMap(values).some((value) => known.includes(value)),
          need.origin.words,
        ).toBe(true);
        expect(need.fromStep).toBeLessThanOrEqual(need.toStep);
      }
      for (const hold of effects.holds)
        expect(effects.leaves.some((leave) => leave.variable === hold.variable)).toBe(true);
    }
  });

  test('is held from its first to its last write', () => {
    const lengths = new Map(
      campaign.tasks.flatMap((task) => task.stints.map((stint) => [stint.key, stint.steps.length])),
    );
    for (const [key, effects] of model.effects) {
      const length = lengths.get(key) ?? 0;
      for (const variable of new Set(effects.leaves.map((leave) => leave.variable))) {
        const steps = effects.leaves.filter((leave) => leave.variable === variable).map((leave) => leave.step);
        const hold = effects.holds.find((one) => one.variable === variable);
        expect(hold?.fromStep).toBe(Math.max(0, Math.min(...steps)));
        expect(hold?.toStep).toBeGreaterThanOrEqual(Math.min(length, Math.max(...steps) + 1));
        expect(hold?.toStep).toBeLessThanOrEqual(length);
      }
    }
  });
});

function related(campaign: Campaign, model: HardwareModel, piece: string, step: Step): boolean {
  const pieces = new Map(campaign.hardware.map((one) => [one.id, one]));
  const named = new Set([...step.objects, step.from, step.to, step.tool].filter((id) => id !== null));
  for (const id of Array.from(named)) {
    const of = pieces.get(id)?.of;
    if (of !== undefined && of !== null) named.add(of);
    for (const other of campaign.hardware) if (other.of === id) named.add(other.id);
  }
  // Whatever can hold a named piece, and whatever can be in a named holder.
  for (let round = 0; round < 3; round++) {
    for (const variable of model.variables.values()) {
      if (variable.about !== 'holder') continue;
      const holders = variable.values.filter((value) => value.startsWith('hardware:')).map((value) => value.slice(9));
      if (named.has(variable.of)) for (const holder of holders) named.add(holder);
      else if (holders.some((holder) => step.to === holder)) named.add(variable.of);
    }
  }
  return named.has(piece);
}
