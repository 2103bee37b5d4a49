/** The plan as `--json` promises it. */
import type { Pin } from '@handrail/eva/campaign/campaign';
import { inputLevel } from '@handrail/eva/campaign/input-level';
import type { CampaignPlan } from '@handrail/eva/schedule/plan-campaign';
import type { PinPrice } from '@handrail/eva/schedule/price-pins';
import type { AnswerBody } from '@handrail/wire/answer/define-answer';
import { findingOnTheWire, instantOnTheWire, isoUtc, petZerosOf } from '@handrail/wire/answer/finding-on-the-wire';
import type { plan } from '@handrail/wire/answers/plan';
import type { LoadedCampaign } from '../load-campaign.ts';

export function planAnswer(
  { campaign, hardware }: LoadedCampaign,
  { timeline, findings }: CampaignPlan,
  prices: readonly PinPrice[],
  isStopped: boolean,
): AnswerBody<typeof plan> {
  const petZeros = petZerosOf(timeline.evas);
  return {
    level: inputLevel(campaign, hardware),
    isStopped,
    evas: timeline.evas.map(({ eva, petZeroUtcMs, bothInS, wall, claim }) => ({
      eva,
      petZeroUtc: isoUtc(petZeroUtcMs),
      bothIn: instantOnTheWire(petZeroUtcMs, bothInS),
      wall:
        wall === null
          ? null
          : { ...instantOnTheWire(petZeroUtcMs, wall.petS), cause: wall.cause, marginS: wall.petS - bothInS },
      status: claim.status,
    })),
    timeline,
    findings: findings.map((finding) => findingOnTheWire(finding, petZeros)),
    pins: prices.map(({ pin, gains, losses, laterS, proved }) => ({
      pin: pinShown(pin),
      gains,
      losses,
      laterS: Object.fromEntries(laterS),
      proved,
    })),
  };
}

/** A pin as the document has it, but for one name: an object with a part called "then" looks like a promise to JavaScript. */
function pinShown(pin: Pin): AnswerBody<typeof plan>['pins'][number]['pin'] {
  if (pin.kind !== 'order') return pin;
  return { kind: pin.kind, first: pin.first, second: pin.then, span: pin.span };
}
