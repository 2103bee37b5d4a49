/** Campaign text in, campaign and inferred states out; the surroundings are the same small invented station each time. */
import type { Campaign } from '@handrail/eva/campaign/campaign';
import { readCampaign } from '@handrail/eva/campaign/read-campaign';
import { describeStates, stateSentences } from '@handrail/eva/hardware/describe-states';
import type { HardwareModel, Need, StintEffects } from '@handrail/eva/hardware/effects';
import { inferHardware } from '@handrail/eva/hardware/infer-hardware';
import { standardLibrary } from '@handrail/eva/kinds/kinds-library';
import { templates } from '@handrail/eva/kinds/templates.generated';

export const STATION = `handrail 1
library standard version="1"
campaign yard "Yard"
person EV1 role=outside
person EV2 role=outside
person IV role=inside
arm crane operator=IV start=parked {
    pose parked
    pose crane-bay place=bay
    pose crane-deck place=deck
    transfer parked crane-bay empty="3 min" loaded="5 min"
    transfer crane-bay crane-deck empty="3 min" loaded="5 min"
}
vehicle station "Station" hatch=porch {
    load-class large factor=1.5 fills-hands=#true
    place porch
    place bay
    place deck
    place tip
    rail porch bay minutes="3 min"
    rail bay deck minutes="2 min"
    rail bay tip minutes="2 min"
}
eva day egress="2031-05-01T10:00:00Z"
request bus-off "Bus off" owner=power inhibits=2 lead="10 min" verify="2 min" clear="5 min" status=agreed
request loop-vented "Loop vented" owner=thermal inhibits=2 lead="10 min" verify="2 min" clear="5 min" status=agreed
`;

export interface Reading {
  readonly campaign: Campaign;
  readonly model: HardwareModel;
  readonly effects: (stint: string) => StintEffects;
  /** The printed lines of one stint. */
  readonly lines: (stint: string) => readonly string[];
}

/** @throws with every problem of the text, so that a test never runs on half a campaign */
export function readText(text: string, opening = STATION): Reading {
  const reading = readCampaign([{ name: 'test.kdl', text: opening + text }], standardLibrary, { templates });
  const errors = reading.problems.filter((problem) => problem.severity === 'error');
  if (reading.campaign === null || errors.length > 0) {
    throw new Error(
      errors.map((one) => `${one.span.line}:${one.span.column} ${one.what} (${one.expected})`).join('\n'),
    );
  }
  const { campaign } = reading;
  const model = inferHardware(campaign, standardLibrary);
  return {
    campaign,
    model,
    effects: (stint) => {
      const effects = model.effects.get(stint);
      if (effects === undefined) throw new Error(`no stint ${stint}`);
      return effects;
    },
    lines: (stint) => {
      const described = describeStates(campaign, model).find((one) => one.stint === stint);
      if (described === undefined) throw new Error(`no stint ${stint}`);
      return stateSentences(described);
    },
  };
}

/** "start j1 = mated", "during 2-3 old.holder = place:bay". */
export function needText(need: Need): string {
  const range = need.when === 'during' ? ` ${need.fromStep}-${need.toStep}` : '';
  return `${need.when}${range} ${need.variable} = ${need.allowed.join(' | ')}`;
}

/** "2 j1 = demated": after step index 2. */
export function leaveTexts(effects: StintEffects): readonly string[] {
  return effects.leaves.map((leave) => `${leave.step} ${leave.variable} = ${leave.value}`);
}
export function holdTexts(effects: StintEffects): readonly string[] {
  return effects.holds.map((hold) => `${hold.variable} ${hold.fromStep}-${hold.toStep}`);
}
