/**
 * `handrail prove FILE… [TIMELINE]`: the stamp on a timeline. Replay, order in every execution, timing for all durations within
 * bounds, ways home in the listed modes, supplies, rules; the holds that it rests on, and what is not known. Without a timeline the
 * campaign is planned first, as `handrail plan` would.
 */
import { MODES } from '@handrail/eva/wayhome/way-home-state';
import { type StampOptions, stampTimeline } from '@handrail/eva/judge/stamp';
import type { Stamp } from '@handrail/eva/proof/claim/prove';
import type { EvaProof } from '@handrail/eva/proof/claim/prove-eva';
import { formatPet } from '@handrail/quantity/time';
import type { Timeline } from '@handrail/eva/timeline/timeline';
import type { AnswerBody } from '@handrail/wire/answer/define-answer';
import { countsOnTheWire, findingOnTheWire, isoUtc, petZerosOf } from '@handrail/wire/answer/finding-on-the-wire';
import { prove as answer } from '@handrail/wire/answers/prove';
import type { Command } from 'commander';
import { EXIT, type ExitCode } from '../exit-code.ts';
import { ExitError } from '../exit-error.ts';
import { loadCampaign } from '../load-campaign.ts';
import { stampLines } from '../stamp-lines.ts';
import { givenOrPlanned } from '../plan/given-or-planned.ts';
import { findingsText } from '../terminal/message-text.ts';
import { print } from '../terminal/output.ts';
import { printAnswer } from '../terminal/print-answer.ts';
import { tableText } from '../terminal/table-text.ts';
import { textWidth, wrapText } from '../terminal/wrap-text.ts';

interface Flags {
  readonly json?: boolean;
  readonly moveSpread?: readonly [number, number];
  readonly reader: string;
  readonly within: number;
  readonly modes?: StampOptions['modes'];
}

export function register(program: Command): void {
  program
    .command('prove')
    .description('prove a timeline: every order of events, every duration within bounds')
    .argument(
      '<files...>',
      'campaign text, and the timeline (.json, or .txt written by hand); without one it is planned',
    )
    .option('--move-spread <least-most>', 'bounds of ways and hatch passages as factors, such as 0.9-1.3', spread)
    .option('--within <share>', 'claim it for this share of the stated spreads, 0 to 3', share, 1)
    .option('--reader <where>', 'inside, or ground: then calls wait for coverage', 'inside')
    .option('--modes <list>', 'ways home that must have a margin, such as terminate,abort; all if not said', modes)
    .option('--json', 'the stamp as JSON')
    .action(async (files: string[], flags: Flags) => {
      const timelines = files.filter((file) => /\.(json|txt)$/.test(file));
      const [file] = timelines;
      if (timelines.length > 1) throw new ExitError(EXIT.badInput, 'name one timeline to prove');
      const texts = files.filter((one) => one !== file);
      if (texts.length === 0) throw new ExitError(EXIT.badInput, 'name the campaign text that the timeline is for');
      const loaded = loadCampaign(...texts);
      const { campaign } = loaded;
      const timeline = await givenOrPlanned(loaded, file);
      const stamp = stampTimeline(loaded, timeline, options(flags));
      const code = exitCode(stamp);
      if (flags.json === true) printStampAsJson(stamp, code, campaign.id, file ?? null, timeline);
      else printStamp(stamp);
      if (code !== EXIT.fine) throw new ExitError(code);
    });
}

function modes(text: string): StampOptions['modes'] {
  return text.split(',').map((word) => {
    const mode = MODES.find((candidate) => candidate === word.trim());
    if (mode === undefined)
      throw new ExitError(EXIT.badInput, `no mode is called "${word.trim()}"; there are ${MODES.join(', ')}`);
    return mode;
  });
}

function spread(text: string): readonly [number, number] {
  const match = /^(\d(?:\.\d+)?)-(\d(?:\.\d+)?)$/.exec(text);
  const [least, most] = [Number(match?.[1]), Number(match?.[2])];
  if (match === null || !(least > 0 && least <= 1 && most >= 1)) {
    throw new ExitError(EXIT.badInput, `"${text}" is not two factors about 1, such as 0.9-1.3`);
  }
  return [least, most];
}

function share(text: string): number {
  const scale = Number(text);
  if (!/^\d(\.\d+)?$/.test(text) || scale > 3)
    throw new ExitError(EXIT.badInput, `"${text}" is not a share from 0 to 3`);
  return scale;
}

function options(flags: Flags): StampOptions {
  if (flags.reader !== 'inside' && flags.reader !== 'ground') {
    throw new ExitError(EXIT.badInput, `the reader is inside or ground, not "${flags.reader}"`);
  }
  return {
    reader: flags.reader,
    spreadScale: flags.within,
    ...(flags.moveSpread === undefined ? {} : { moveSpread: flags.moveSpread }),
    ...(flags.modes === undefined ? {} : { modes: flags.modes }),
  };
}

function exitCode({ verdict }: Stamp): ExitCode {
  if (verdict === 'checked') return EXIT.fine;
  return verdict === 'cannot tell' ? EXIT.cannotTell : EXIT.findings;
}

function printStampAsJson(
  stamp: Stamp,
  code: ExitCode,
  campaign: string,
  file: string | null,
  timeline: Timeline,
): void {
  const { verdict, words, hash, documentHash, library, requirements, unknowns, expiry } = stamp;
  const petZeros = petZerosOf(timeline.evas);
  printAnswer(answer, code, {
    campaign,
    timeline: file,
    verdict,
    words,
    hash,
    documentHash,
    library,
    requirements,
    evas: stamp.evas.map(evaData),
    level: stamp.parts === null ? null : pickLevel(stamp.parts.level),
    quantile: stamp.parts?.quantile ?? null,
    margins: [...(stamp.parts?.margins ?? [])],
    supplies: [...(stamp.parts?.supplies ?? [])],
    dataAge: [...(stamp.parts?.dataAge ?? [])],
    unknowns,
    assumptions: stamp.assumptions,
    waivers: stamp.waivers.map(({ untilUtcMs, ...waiver }) => ({ ...waiver, until: isoUtc(untilUtcMs) })),
    expiry: { withAnyChangeOf: expiry.withAnyChangeOf, at: isoUtc(expiry.atUtcMs), why: expiry.why },
    counts: countsOnTheWire(stamp.findings),
    findings: stamp.findings.map((finding) => findingOnTheWire(finding, petZeros)),
  });
}

function pickLevel({ level, title, missing }: NonNullable<Stamp['parts']>['level']) {
  return { level, title, missing: [...missing] };
}

function evaData(proof: EvaProof): AnswerBody<typeof answer>['evas'][number] {
  const {
    eva,
    raceFree,
    pairs,
    controllable,
    conflict,
    durations,
    probabilityAtScale,
    latestEgressS,
    slipS,
    reactionS,
  } = proof;
  return {
    eva,
    raceFree,
    pairs,
    proposedHolds: proof.proposedHolds.map((hold) => ({
      releases: hold.releases,
      waits: hold.waits,
      releasesSteps: hold.releasesSteps ?? null,
      releasesWayOf: hold.releasesWayOf ?? null,
      waitsStep: hold.waitsStep ?? 0,
      waitsWayOf: hold.waitsWayOf ?? null,
    })),
    controllable,
    conflict: conflict === null ? null : { ...conflict, limits: conflict.limits.map(({ reason }) => reason) },
    holds: proof.holds.map(({ words, stint, lanes, mayBeLate, petS }) => ({
      words,
      stint,
      who: lanes,
      mayBeLate,
      petS: Math.round(petS),
    })),
    stints: durations.stints,
    spreadScaleOfD: durations.scale,
    bounded: durations.bounded,
    unbounded: durations.unbounded,
    moveSpread: durations.moveSpread,
    probabilityInD: durations.probability,
    spreadScale: proof.scale,
    spreadScaleIsMost: proof.scaleIsMost,
    probabilityAtScale,
    latestEgressS,
    slipS,
    reactionS,
  };
}

function printStamp(stamp: Stamp): void {
  if (stamp.findings.length > 0) print(`${findingsText(stamp.findings)}\n\n`);
  const heads = ['EVA', 'in order', 'kept in D', 'spread borne', 'bounded stints', 'P(these in D)', 'latest egress'];
  print(tableText(heads, stamp.evas.map(row)));
  const lines = [
    ...stampLines(stamp),
    ...stamp.evas.flatMap(({ eva, holds }) => holds.map(({ words }) => `${eva}: ${words}`)),
    ...stamp.unknowns.map((words) => `not known: ${words}`),
    ...stamp.assumptions.map((words) => `taken: ${words}`),
    ...stamp.waivers.map(({ rule, of, reason, by }) => `waived: ${rule} of ${of}: ${reason} (${by})`),
    `expires with any change of ${stamp.expiry.withAnyChangeOf}; else ${stamp.expiry.why}`,
    `stamp ${stamp.hash.slice(0, 16)}, document ${stamp.documentHash.slice(0, 12)}, library ${stamp.library.id} ${stamp.library.version}`,
    stamp.words,
  ];
  for (const line of lines) print(wrapText(line, textWidth()));
}

function row(proof: EvaProof): string[] {
  const { durations, scale, scaleIsMost, latestEgressS } = proof;
  return [
    proof.eva,
    proof.raceFree
      ? `yes, ${proof.pairs} pairs`
      : `no, lacks ${proof.proposedHolds.length} ${proof.proposedHolds.length === 1 ? 'hold' : 'holds'}`,
    proof.controllable ? 'yes' : 'no',
    scale === null ? 'none' : `${scaleIsMost ? 'at least ' : ''}${Math.round(scale * 100)} %`,
    `${durations.bounded} of ${durations.stints}`,
    percent(durations.probability),
    latestEgressS === null ? 'none in D' : `+${formatPet(latestEgressS)}`,
  ];
}

function percent(share: number | null): string {
  if (share === null) return 'unknown';
  return share < 0.0001 ? 'under 0.01 %' : `${(share * 100).toPrecision(2)} %`;
}
