/**
 * `handrail prove FILE… TIMELINE`: what can be claimed of a timeline. Replay, order in every execution, timing for all durations
 * within bounds; the holds that it rests on, how much spread it bears, and what is not known.
 */
import { formatFinding } from '@handrail/eva/finding/format-finding';
import { prove as proveTimeline, type Stamp } from '@handrail/eva/proof/claim/prove';
import type { EvaProof, ProofOptions } from '@handrail/eva/proof/claim/prove-eva';
import { formatPet } from '@handrail/quantity/time';
import type { Command } from 'commander';
import { EXIT, type ExitCode } from '../exit-code.ts';
import { ExitError } from '../exit-error.ts';
import { loadCampaign } from '../load-campaign.ts';
import { loadTimeline } from '../load-timeline.ts';
import { print, printJson } from '../terminal/output.ts';
import { tableText } from '../terminal/table-text.ts';

interface Flags {
  readonly json?: boolean;
  readonly moveSpread?: readonly [number, number];
  readonly reader: string;
}

export function register(program: Command): void {
  program
    .command('prove')
    .description('prove a timeline: every order of events, every duration within bounds')
    .argument('<files...>', 'campaign text, and the timeline (.json, or .txt written by hand)')
    .option('--move-spread <least-most>', 'bounds of ways and hatch passages as factors, such as 0.9-1.3', spread)
    .option('--reader <where>', 'inside, or ground: then calls wait for coverage', 'inside')
    .option('--json', 'the stamp as JSON')
    .action((files: string[], flags: Flags) => {
      const timelines = files.filter((file) => /\.(json|txt)$/.test(file));
      const [file] = timelines;
      if (file === undefined || timelines.length > 1) throw new ExitError(EXIT.badInput, 'name one timeline to prove');
      const texts = files.filter((one) => one !== file);
      if (texts.length === 0) throw new ExitError(EXIT.badInput, 'name the campaign text that the timeline is for');
      const { campaign, hardware } = loadCampaign(...texts);
      const stamp = proveTimeline(campaign, hardware, loadTimeline(file, campaign), options(flags));
      const code = exitCode(stamp);
      if (flags.json === true)
        printJson({
          format: 'handrail-answer',
          version: 1,
          command: 'prove',
          exitCode: code,
          campaign: campaign.id,
          timeline: file,
          stamp,
        });
      else printStamp(stamp);
      if (code !== EXIT.fine) throw new ExitError(code);
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

function options(flags: Flags): ProofOptions {
  if (flags.reader !== 'inside' && flags.reader !== 'ground') {
    throw new ExitError(EXIT.badInput, `the reader is inside or ground, not "${flags.reader}"`);
  }
  return { reader: flags.reader, ...(flags.moveSpread === undefined ? {} : { moveSpread: flags.moveSpread }) };
}

function exitCode({ verdict }: Stamp): ExitCode {
  if (verdict === 'checked') return EXIT.fine;
  return verdict === 'cannot tell' ? EXIT.cannotTell : EXIT.findings;
}

function printStamp(stamp: Stamp): void {
  for (const finding of stamp.findings) print(`${formatFinding(finding)}\n\n`);
  print(
    tableText(
      ['EVA', 'in order', 'kept within D', 'spread borne', 'stints with bounds', 'P(all of these in D)', 'egress by'],
      stamp.evas.map(row),
    ),
  );
  for (const { eva, holds } of stamp.evas) for (const { words } of holds) print(`  ${eva}: ${words}`);
  for (const unknown of stamp.unknowns) print(`  not known: ${unknown}`);
  for (const { rule, of, reason, by } of stamp.waivers) print(`  waived: ${rule} of ${of}: ${reason} (${by})`);
  print(`  expires with any change of ${stamp.expiry.withAnyChangeOf}; else ${stamp.expiry.why}`);
  print(
    `  stamp ${stamp.hash.slice(0, 16)}, document ${stamp.documentHash.slice(0, 12)}, library ${stamp.library.id} ${stamp.library.version}`,
  );
  print(stamp.words);
}

function row(proof: EvaProof): string[] {
  const { durations, scale, scaleIsMost, latestEgressS } = proof;
  return [
    proof.eva,
    proof.raceFree ? `yes, ${proof.pairs} pairs` : `with ${proof.proposedHolds.length} more holds`,
    proof.controllable ? 'yes' : 'no',
    scale === null ? 'none' : `${scaleIsMost ? 'at least ' : ''}${Math.round(scale * 100)} %`,
    `${durations.bounded} of ${durations.stints}`,
    durations.probability === null ? 'unknown' : `${(durations.probability * 100).toPrecision(2)} %`,
    latestEgressS === null ? 'not on time' : `+${formatPet(latestEgressS)}`,
  ];
}
