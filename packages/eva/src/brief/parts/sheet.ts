/** The sheet of one stint: people, settings, kit, needs and leaves, evidence for its minutes, findings. */
import { formatDuration, formatPet, formatUtcClock } from '@handrail/quantity/time';
import { formatSpan } from '../../campaign/span.ts';
import type { Campaign, Stint } from '../../campaign/campaign.ts';
import { plannedDrives } from '../../fastener/planned-drives.ts';
import { driveLines } from '../../fastener/window-in-words.ts';
import type { EvaTimeline, PlannedStint } from '../../timeline/timeline.ts';
import type { Binding } from '../../timeline/binding-chain.ts';
import { elementId, type Markup, markup } from '../markup.ts';
import type { BriefInput } from '../brief-input.ts';
import { listOf, stepSentence, titleOf } from '../step-sentence.ts';

export const BASIS: Readonly<Record<Stint['duration']['basis'], string>> = {
  stated: 'stated in the campaign',
  'three-figures': 'from low, likely and high',
  samples: 'from recorded samples',
  steps: "summed from the kinds' own figures",
};

export function sheet(
  input: BriefInput,
  eva: EvaTimeline,
  stint: Stint,
  planned: PlannedStint,
  number: number,
  why: readonly Binding[],
): Markup {
  const { campaign } = input;
  const effects = input.hardware.effects.get(stint.key);
  const drives = plannedDrives(campaign, input.hardware).filter((drive) => drive.stint.key === stint.key);
  const findings = input.findings.filter((finding) => finding.where.stint === stint.key);
  return markup`<article class="sheet" id="${elementId('sheet', eva.eva, stint.key)}" data-stint="${stint.key}" tabindex="-1">
<h4><span class="number">${number}</span> ${stint.title}</h4>
<p class="when">PET ${formatPet(planned.startS)} to ${formatPet(planned.endS)}, UTC ${formatUtcClock(eva.petZeroUtcMs + planned.startS * 1000)}, ${formatDuration(planned.endS - planned.startS)}</p>
${stint.caution === null ? null : markup`<p class="caution"><strong>Caution:</strong> ${stint.caution}</p>`}
<dl><dt>Who, where</dt><dd>${stint.roles.map((role, index) => markup`<span class="line">${planned.assigned[index]} (${role.name}) ${roleWords(campaign, stint, index)}</span>`)}</dd>
<dt>Steps</dt><dd><ol>${stint.steps.map((step) => markup`<li>${step.caution === null ? null : markup`<strong class="caution">Caution: ${step.caution}.</strong> `}${stepSentence(campaign, step)}${step.by === 'lead' ? null : ` (${step.by})`}</li>`)}</ol></dd>
<dt>Tools, requests</dt><dd>${listOrNone([...(effects?.tools.map((use) => use.tool) ?? []), ...(effects?.controls.map((use) => `under ${use.request}`) ?? [])])}</dd>
${
  drives.length === 0
    ? null
    : markup`<dt>Turns, torque</dt><dd><ul>${driveLines(drives).map((line) => markup`<li>${line}</li>`)}</ul></dd>
`
}<dt>Needs</dt><dd>${listOrNone((effects?.needs ?? []).map((need) => `${need.variable} ${need.allowed.join(' or ')}`))}</dd>
<dt>Leaves</dt><dd>${listOrNone((effects?.leaves ?? []).map((leave) => `${leave.variable} ${leave.value}`))}</dd>
<dt>Minutes</dt><dd>${evidence(stint)}</dd>
<dt>Why here</dt><dd><ul>${why.slice(0, 3).map((binding) => markup`<li>${binding.words}</li>`)}</ul></dd>
<dt>Stands at</dt><dd>${formatSpan(stint.span)}</dd>
<dt>Findings</dt><dd>${findings.length === 0 ? 'none' : markup`<ul>${findings.map((finding) => markup`<li class="${finding.severity}">${finding.severity}: ${finding.title}. ${finding.why}</li>`)}</ul>`}</dd></dl>
<p class="back"><a href="#${elementId('eva', eva.eva)}">back to the chart</a></p></article>`;
}

/** Where a role works, from what, on which steps. */
export function roleWords(campaign: Campaign, stint: Stint, index: number): string {
  const role = stint.roles[index];
  if (role === undefined) return '';
  const poses = campaign.arms.flatMap((arm) => arm.poses);
  const name = (id: string): string => poses.find((pose) => pose.id === id)?.title ?? titleOf(campaign, id);
  const place = role.at === role.to ? `at ${name(role.at)}` : `from ${name(role.at)} to ${name(role.to)}`;
  const restraint =
    role.restraint === null ? '' : `, in ${titleOf(campaign, role.restraint)}${settingsOf(campaign, role.restraint)}`;
  const range =
    role.fromStep === 0 && role.toStep >= stint.steps.length ? '' : `, steps ${role.fromStep + 1} to ${role.toStep}`;
  const on = role.endOn === null ? '' : `, on the plate of ${titleOf(campaign, role.endOn)}`;
  return `${place}${restraint}${on}${range}`;
}

function settingsOf(campaign: Campaign, restraint: string): string {
  const settings = Object.entries(campaign.hardware.find((piece) => piece.id === restraint)?.settings ?? {});
  return settings.length === 0 ? '' : ` set to ${settings.map(([name, value]) => `${name} ${value}`).join(', ')}`;
}

/** What the minutes of a stint rest on. */
export function evidence(stint: Stint): string {
  const { duration } = stint;
  const spread =
    duration.spread === null
      ? 'no spread stated'
      : `10th, 50th, 90th percentile ${formatDuration(duration.spread.lowS)}, ${formatDuration(duration.spread.likelyS)}, ${formatDuration(duration.spread.highS)}`;
  const samples =
    duration.evidence.length === 0
      ? ''
      : `; ${duration.evidence.length} samples (${listOf([...new Set(duration.evidence.map((sample) => sample.where))])})`;
  return `agreed ${formatDuration(duration.agreedS)}, ${BASIS[duration.basis]}; ${spread}${samples}`;
}

function listOrNone(words: readonly string[]): Markup | string {
  const unique = [...new Set(words)];
  return unique.length === 0
    ? 'none'
    : markup`<ul class="inline">${unique.map((word) => markup`<li>${word}</li>`)}</ul>`;
}
