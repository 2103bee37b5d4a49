/**
 * `handrail fasteners FILE`: every fastener that is driven in: expected turns and torque window, drive time, whether the planned tool fits;
 * with `--reading ID turns=… torque=…` a logged drive judged, and what to try next.
 */
import type { Campaign } from '@handrail/eva/campaign/campaign';
import { type DriveReading, judgeDrive } from '@handrail/eva/fastener/judge-drive';
import { type PlannedDrive, plannedDrives } from '@handrail/eva/fastener/planned-drives';
import { driveTimeS, toolFit } from '@handrail/eva/fastener/tool-fit';
import { torqueRangeWords, torqueWords, turnsWords } from '@handrail/eva/fastener/window-in-words';
import { parseQuantity } from '@handrail/quantity/quantity';
import { formatDuration } from '@handrail/quantity/time';
import type { AnswerBody } from '@handrail/wire/answer/define-answer';
import { fasteners } from '@handrail/wire/answers/fasteners';
import type { Command } from 'commander';
import { EXIT } from '../exit-code.ts';
import { ExitError } from '../exit-error.ts';
import { loadCampaign } from '../load-campaign.ts';
import { print } from '../terminal/output.ts';
import { printAnswer } from '../terminal/print-answer.ts';
import { tableText } from '../terminal/table-text.ts';

interface FastenerOptions {
  readonly reading?: readonly string[];
  readonly json?: boolean;
}

export function register(program: Command): void {
  program
    .command('fasteners')
    .description('turns, torque window, drive time and tool of every fastener; a logged reading judged')
    .argument('<file>', 'campaign text')
    .option('--reading <words...>', 'ID turns=14.2 torque="30 N·m" (or clutch=reached, clutch=not-reached)')
    .option('--json', 'the same as JSON')
    .action((file: string, options: FastenerOptions) => {
      const { campaign, hardware } = loadCampaign(file);
      const drives = plannedDrives(campaign, hardware);
      if (options.reading !== undefined) judge(campaign, drives, options.reading, options.json === true);
      else list(campaign, drives, options.json === true);
    });
}

function list(campaign: Campaign, drives: readonly PlannedDrive[], asJson: boolean): void {
  const rows = drives.map((drive) => ({ drive, ...answerFor(drive) }));
  if (asJson) {
    printAnswer(fasteners, rows.some(({ bad }) => bad) ? EXIT.findings : EXIT.fine, {
      campaign: campaign.id,
      drives: drives.map(onTheWire),
      reading: null,
    });
  } else if (rows.length === 0) print('no sentence drives a fastener in');
  else {
    // Fasteners that share all their figures share a row.
    const shared = new Map<string, { readonly ids: string[]; readonly cells: readonly string[] }>();
    for (const { drive, fit, driveS } of rows) {
      const cells = [
        drive.stint.key,
        drive.tool?.id ?? 'left open',
        turnsWords(drive),
        torqueWords(drive),
        drive.basis ?? '—',
        driveS === null ? 'no speed stated' : formatDuration(driveS),
        fit,
      ];
      const row = shared.get(cells.join('|')) ?? { ids: [], cells };
      row.ids.push(drive.piece.id);
      shared.set(cells.join('|'), row);
    }
    print(
      tableText(
        ['fasteners', 'where', 'tool', 'turns', 'torque window', 'from', 'time of each', 'fit'],
        [...shared.values()].map(({ ids, cells }) => [ids.join(' '), ...cells]),
      ),
    );
    const lacking = new Map<string, string[]>();
    for (const { drive } of rows) {
      if (drive.missing.length === 0) continue;
      const words = drive.missing.join(', ');
      lacking.set(words, [...(lacking.get(words) ?? []), drive.piece.id]);
    }
    for (const [words, ids] of lacking)
      print(`cannot tell the window of ${[...new Set(ids)].join(', ')}: ${words} not stated`);
  }
  if (rows.some(({ bad }) => bad)) throw new ExitError(EXIT.findings);
}

function onTheWire(drive: PlannedDrive): AnswerBody<typeof fasteners>['drives'][number] {
  const { fit, fits, driveS } = answerFor(drive);
  return {
    fastener: drive.piece.id,
    stint: drive.stint.key,
    step: drive.step,
    tool: drive.tool?.id ?? null,
    turns: drive.turns,
    torqueNm: drive.torqueNm,
    window: drive.window,
    basis: drive.basis,
    missing: drive.missing,
    refused: drive.refused,
    driveS,
    fit: fits,
    fitWords: fit,
  };
}

interface FitAnswer {
  readonly fit: string;
  readonly fits: 'yes' | 'no' | 'unknown';
  readonly bad: boolean;
  readonly driveS: number | null;
}

function answerFor(drive: PlannedDrive): FitAnswer {
  const { window, tool, refused } = drive;
  const turns = window?.turns.likely ?? drive.turns;
  const driveS = turns === null || tool === null ? null : driveTimeS(turns, tool);
  if (refused !== null) return { fit: `no window: ${refused}`, fits: 'no', bad: true, driveS };
  if (window === null || tool === null) return { fit: 'cannot tell', fits: 'unknown', bad: false, driveS };
  const fit = toolFit(window, tool);
  if (fit.fits === 'no') return { fit: `no: ${fit.why}`, fits: 'no', bad: true, driveS };
  if (fit.fits === 'unknown')
    return { fit: `cannot tell: ${fit.missing} not stated`, fits: 'unknown', bad: false, driveS };
  const all = fit.leastNm === window.torqueNm.low && fit.mostNm === window.torqueNm.high;
  const words = all ? 'fits' : `set ${torqueRangeWords(fit.leastNm, fit.mostNm)}`;
  return { fit: words, fits: 'yes', bad: false, driveS };
}

function judge(campaign: Campaign, drives: readonly PlannedDrive[], words: readonly string[], asJson: boolean): void {
  const [id, ...figures] = words;
  const drive = drives.find(({ piece }) => piece.id === id);
  if (drive === undefined) {
    const known = campaign.hardware.some((piece) => piece.id === id);
    throw new ExitError(EXIT.badInput, known ? `no sentence drives "${id}" in` : `there is no hardware "${id}"`);
  }
  const reading = readingOf(figures);
  if (drive.window === null) {
    const why = drive.refused ?? `${drive.missing.join(', ')} not stated`;
    throw new ExitError(EXIT.cannotTell, `no window for ${drive.piece.id}, so no reading can be judged: ${why}`);
  }
  const judgement = judgeDrive(drive.window, reading);
  if (asJson) {
    printAnswer(fasteners, judgement.verdict === 'seated' ? EXIT.fine : EXIT.findings, {
      campaign: campaign.id,
      drives: [onTheWire(drive)],
      reading: { fastener: drive.piece.id, ...judgement },
    });
  } else {
    print(`${drive.piece.title}: ${judgement.verdict.replaceAll('-', ' ')}`);
    print(`  why   ${judgement.why}`);
    judgement.tryNext.forEach(({ say, asks }, index) => {
      print(`  ${index === 0 ? 'next ' : '     '} ${index + 1}. ${say}${asks ? ' (ask first)' : ''}`);
    });
    const own = campaign.responses.filter(
      ({ appliesTo }) => appliesTo !== null && 'kind' in appliesTo && appliesTo.kind === drive.piece.kind,
    );
    for (const response of own) print(`  more  response of this campaign: ${response.title} (${response.id})`);
  }
  if (judgement.verdict !== 'seated') throw new ExitError(EXIT.findings);
}

function readingOf(figures: readonly string[]): DriveReading {
  const said = new Map(figures.map((figure) => figure.split('=', 2) as [string, string | undefined]));
  const turns = Number(said.get('turns'));
  if (said.get('turns') === undefined || !Number.isFinite(turns)) {
    throw new ExitError(EXIT.badInput, 'a reading says turns=, a number, and torque="30 N·m" or clutch=reached');
  }
  const unknown = [...said.keys()].find((name) => !['turns', 'torque', 'clutch'].includes(name));
  if (unknown !== undefined)
    throw new ExitError(EXIT.badInput, `a reading has no "${unknown}"; it has turns, torque, clutch`);
  const torque = said.get('torque');
  const clutch = said.get('clutch');
  if (torque !== undefined) {
    const read = parseQuantity(/^[\d.]+$/.test(torque) ? `${torque} N·m` : torque);
    if (!read.ok || read.dimension !== 'torque') throw new ExitError(EXIT.badInput, `"${torque}" is not a torque`);
    return { turns, torque: { kind: 'measured', torqueNm: read.si } };
  }
  if (clutch !== undefined && clutch !== 'reached' && clutch !== 'not-reached') {
    throw new ExitError(EXIT.badInput, `clutch is reached or not-reached, not "${clutch}"`);
  }
  return { turns, torque: clutch === undefined ? { kind: 'none' } : { kind: 'clutch', reached: clutch === 'reached' } };
}
