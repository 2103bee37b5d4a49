/** The plan as `--json` promises it. */
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
    pins: prices.map((price) => ({ ...price, laterS: Object.fromEntries(price.laterS) })),
  };
}
