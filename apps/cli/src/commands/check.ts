/**
 * `handrail check FILE… [TIMELINE]`: the second opinion. With a timeline: the independent replay and the rule catalogue.
 * Without: what the text leaves open, since there is no plan to replay.
 */
import type { Finding } from '@handrail/eva/finding/finding';
import { countFindings } from '@handrail/eva/finding/format-finding';
import type { Timeline } from '@handrail/eva/timeline/timeline';
import { check } from '@handrail/wire/answers/check';
import { countsOnTheWire, findingOnTheWire, petZerosOf } from '@handrail/wire/answer/finding-on-the-wire';
import type { Command } from 'commander';
import { EXIT, type ExitCode } from '../exit-code.ts';
import { ExitError } from '../exit-error.ts';
import { judgeTimeline } from '@handrail/eva/judge/judge-timeline';
import { type LoadedCampaign, loadCampaign } from '../load-campaign.ts';
import { loadTimeline } from '../load-timeline.ts';
import { findingsText } from '../terminal/message-text.ts';
import { print } from '../terminal/output.ts';
import { printAnswer } from '../terminal/print-answer.ts';
import { textWidth, wrapText } from '../terminal/wrap-text.ts';

interface CheckOptions {
  readonly json?: boolean;
}

export function register(program: Command): void {
  program
    .command('check')
    .description('check a timeline against its campaign: an independent replay and every rule')
    .argument('<files...>', 'campaign text, and the timeline (.json, or .txt written by hand) to check')
    .option('--json', 'the findings as JSON')
    .action((files: string[], options: CheckOptions) => {
      const timelines = files.filter((file) => /\.(json|txt)$/.test(file));
      const [timelineFile] = timelines;
      if (timelines.length > 1) throw new ExitError(EXIT.badInput, `one timeline at a time: ${timelines.join(', ')}`);
      const texts = files.filter((file) => !timelines.includes(file));
      if (texts.length === 0) throw new ExitError(EXIT.badInput, 'name the campaign text that the timeline is for');
      const loaded = loadCampaign(...texts);
      const timeline = timelineFile === undefined ? null : loadTimeline(timelineFile, loaded.campaign);
      const findings = timeline === null ? leftOpen(loaded) : judgeTimeline(loaded, timeline, Date.now());
      const code = exitCode(findings);
      const verdict = verdictOf(findings, timeline, texts);
      if (options.json === true) {
        const petZeros = petZerosOf(timeline?.evas ?? []);
        printAnswer(check, code, {
          campaign: loaded.campaign.id,
          documentHash: loaded.campaign.documentHash,
          timeline: timelineFile ?? null,
          verdict,
          counts: countsOnTheWire(findings),
          findings: findings.map((finding) => findingOnTheWire(finding, petZeros)),
        });
      } else {
        if (findings.length > 0) print(`${findingsText(findings)}\n\n`);
        print(wrapText(verdict, textWidth()));
      }
      if (code !== EXIT.fine) throw new ExitError(code);
    });
}

/** What could not be read from the sentences: without a plan that is all there is to tell. */
function leftOpen({ campaign, hardware }: LoadedCampaign): readonly Finding[] {
  return campaign.tasks
    .flatMap((task) => task.stints)
    .flatMap((stint) =>
      (hardware.effects.get(stint.key)?.unknowns ?? []).map(
        ({ words, span }): Finding => ({
          rule: 'replay/effects-are-known',
          severity: 'unknown',
          title: `Part of what "${stint.title}" needs and leaves is not known`,
          where: { eva: null, person: null, stint: stint.key, step: null, petS: null, span },
          why: words,
          mend: 'name the hardware, or write the need or the leave',
          source: null,
          waiver: null,
        }),
      ),
    );
}

function exitCode(findings: readonly Finding[]): ExitCode {
  const open = findings.filter((finding) => finding.waiver === null);
  if (open.some((finding) => finding.severity === 'error')) return EXIT.findings;
  return open.some((finding) => finding.severity === 'unknown') ? EXIT.cannotTell : EXIT.fine;
}

function verdictOf(findings: readonly Finding[], timeline: Timeline | null, texts: readonly string[]): string {
  const counted = countFindings(findings);
  if (timeline === null) {
    return `${counted} in the text. No timeline was given, so no plan was checked: next, handrail plan ${texts.join(' ')} -o plan.json`;
  }
  const stints = timeline.evas.reduce((sum, plan) => sum + plan.stints.length, 0);
  return `${counted}: ${stints} stints in ${timeline.evas.length} ${timeline.evas.length === 1 ? 'EVA' : 'EVAs'} replayed for these durations, independently of planning`;
}
