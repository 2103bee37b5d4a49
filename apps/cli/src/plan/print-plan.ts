/** A plan for people: each EVA's table and what is claimed of it, what is left out and why, what pins cost. */
import { formatDuration, formatPet, formatUtc } from '@handrail/quantity/time';
import type { Pin } from '@handrail/eva/campaign/campaign';
import type { CampaignPlan } from '@handrail/eva/schedule/plan-campaign';
import type { PinPrice } from '@handrail/eva/schedule/price-pins';
import { inputLevel, inputLevelSentence } from '@handrail/eva/campaign/input-level';
import type { LoadedCampaign } from '../load-campaign.ts';
import { findingsText } from '../terminal/message-text.ts';
import { print } from '../terminal/output.ts';
import { textWidth, wrapText } from '../terminal/wrap-text.ts';
import { outcomeSentence, timelineTable } from './timeline-table.ts';

export function printPlan(
  { campaign, hardware }: LoadedCampaign,
  found: CampaignPlan,
  prices: readonly PinPrice[],
): void {
  printWrapped(inputLevelSentence(inputLevel(campaign, hardware)));
  for (const eva of found.timeline.evas) {
    const title = campaign.evas.find(({ id }) => id === eva.eva)?.title ?? eva.eva;
    print(`\nEVA ${title} (${eva.eva}), PET 0 is ${formatUtc(eva.petZeroUtcMs)}`);
    print(timelineTable(campaign, eva));
    printWrapped(outcomeSentence(eva));
  }
  if (found.timeline.evas.length > 1) {
    print('');
    printWrapped(
      'What is proved is proved EVA by EVA, for the tasks offered to each; how tasks are shared among EVAs is searched, not proved.',
    );
  }
  if (found.timeline.leftOut.length + prices.length > 0) print('');
  for (const { task: id, why } of found.timeline.leftOut) {
    const task = campaign.tasks.find((candidate) => candidate.id === id);
    printWrapped(`left out  ${id} (rank ${task?.rank ?? 'not known'}): ${why}`, 10);
  }
  for (const price of prices) printWrapped(priceWords(price), 10);
  const others = found.findings.filter(({ rule }) => rule !== 'schedule/ranked-work-is-in');
  if (others.length > 0) print(`\n${findingsText(others)}`);
}

function printWrapped(text: string, indent = 0): void {
  print(wrapText(text, textWidth(), indent));
}

function priceWords({ pin, gains, losses, laterS, proved }: PinPrice): string {
  const parts: string[] = [];
  if (gains.length > 0) parts.push(`keeps out ${gains.join(', ')}`);
  if (losses.length > 0) parts.push(`keeps in ${losses.join(', ')}`);
  for (const [eva, s] of laterS) {
    if (s !== 0) parts.push(`EVA ${eva} ${formatDuration(Math.abs(s))} ${s > 0 ? 'later' : 'earlier'}`);
  }
  const price = parts.length === 0 ? 'costs nothing' : parts.join('; ');
  return `pin       ${pinWords(pin)}: ${price}${proved ? '' : ' (by the plans found, not proved)'}`;
}

function pinWords(pin: Pin): string {
  if (pin.kind === 'person') return `${pin.person} as ${pin.role} of ${pin.stint}`;
  if (pin.kind === 'start') return `${pin.stint} at PET ${formatPet(pin.petS)}`;
  if (pin.kind === 'order') return `${pin.first} before ${pin.then}`;
  if (pin.kind === 'eva') return `${pin.task} in EVA ${pin.eva}`;
  return `${pin.task} out`;
}
