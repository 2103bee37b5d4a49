/**
 * `handrail prebreathe FILE`: each stated pre-breathe, stage by stage: tissue nitrogen over suit pressure against the operator's limit, the
 * oxygen still needed, breaks and what they owe, and what the answer would be at the ends of the uncertain figures.
 */
import type { Prebreathe } from '@handrail/eva/campaign/campaign';
import { oxygenBlocks } from '@handrail/eva/prebreathe/break-payback';
import { prebreatheSensitivity } from '@handrail/eva/prebreathe/prebreathe-sensitivity';
import { runPrebreathe } from '@handrail/eva/prebreathe/run-prebreathe';
import { formatDuration } from '@handrail/quantity/time';
import type { AnswerBody } from '@handrail/wire/answer/define-answer';
import { prebreathe } from '@handrail/wire/answers/prebreathe';
import type { Command } from 'commander';
import { EXIT, type ExitCode } from '../exit-code.ts';
import { ExitError } from '../exit-error.ts';
import { loadCampaign } from '../load-campaign.ts';
import { print } from '../terminal/output.ts';
import { printAnswer } from '../terminal/print-answer.ts';
import { tableText } from '../terminal/table-text.ts';

export function register(program: Command): void {
  program
    .command('prebreathe')
    .description('pre-breathe protocols as stated: ratio against the limit, time still needed, sensitivity')
    .argument('<files...>', 'campaign text')
    .option('--json', 'the same as JSON')
    .action((files: string[], options: { readonly json?: boolean }) => {
      const { campaign } = loadCampaign(...files);
      if (campaign.prebreathes.length === 0) {
        throw new ExitError(
          EXIT.cannotTell,
          'no pre-breathe is stated, and none is filled in: write prebreathe … { stage … }',
        );
      }
      const answers = campaign.prebreathes.map((protocol) => ({
        protocol,
        evas: campaign.evas.filter((eva) => eva.prebreathe === protocol.id).map((eva) => eva.id),
        result: runPrebreathe(protocol.stages, protocol.model),
        sensitivity: prebreatheSensitivity(protocol.stages, protocol.model),
        blocks: protocol.breakRule === null ? null : oxygenBlocks(protocol.stages, protocol.breakRule),
      }));
      const without = campaign.evas.filter((eva) => eva.prebreathe === null).map((eva) => eva.id);
      const code = exitCode(
        answers.every(({ result }) => result.holds),
        without,
      );
      if (options.json === true) {
        printAnswer(prebreathe, code, {
          campaign: campaign.id,
          protocols: answers.map(onTheWire),
          evasWithout: without,
        });
      } else {
        for (const answer of answers) printProtocol(answer);
        if (without.length > 0) print(`\nno pre-breathe is stated for EVA ${without.join(', ')}: cannot tell`);
      }
      if (code !== EXIT.fine) throw new ExitError(code);
    });
}

function exitCode(allHold: boolean, without: readonly string[]): ExitCode {
  if (!allHold) return EXIT.findings;
  return without.length > 0 ? EXIT.cannotTell : EXIT.fine;
}

interface Answer {
  readonly protocol: Prebreathe;
  readonly evas: readonly string[];
  readonly result: ReturnType<typeof runPrebreathe>;
  readonly sensitivity: ReturnType<typeof prebreatheSensitivity>;
  readonly blocks: ReturnType<typeof oxygenBlocks> | null;
}

function onTheWire({
  protocol,
  evas,
  result,
  sensitivity,
  blocks,
}: Answer): AnswerBody<typeof prebreathe>['protocols'][number] {
  return {
    id: protocol.id,
    title: protocol.title,
    evas,
    suitPressurePa: protocol.model.suitPressurePa,
    stages: protocol.stages.map((stage, index) => ({
      ...stage,
      endS: result.ends[index]?.endS ?? 0,
      tissuePa: result.ends[index]?.tissuePa ?? [],
      ratio: result.ends[index]?.ratio ?? 0,
    })),
    ratio: result.ratio,
    limit: result.limit,
    holds: result.holds,
    stillNeededS: result.stillNeededS,
    oxygenBlocks: blocks,
    sensitivity,
    notes: result.notes,
  };
}

function printProtocol({ protocol, evas, result, sensitivity, blocks }: Answer): void {
  const { model, stages } = protocol;
  print(`\n${protocol.title} (${protocol.id}), for ${evas.length === 0 ? 'no EVA' : `EVA ${evas.join(', ')}`}`);
  const rows = stages.map((stage, index) => {
    const end = result.ends[index];
    return [
      stage.title,
      stage.role,
      stage.startPressurePa === stage.endPressurePa
        ? kilopascals(stage.startPressurePa)
        : `${kilopascals(stage.startPressurePa)} to ${kilopascals(stage.endPressurePa)}`,
      `${Math.round(stage.oxygenFraction * 1000) / 10} %`,
      formatDuration(stage.durationS),
      end === undefined ? '' : formatDuration(end.endS),
      end === undefined ? '' : kilopascals(end.tissuePa[0] ?? 0),
      end === undefined ? '' : end.ratio.toFixed(3),
    ];
  });
  print(tableText(['stage', 'role', 'pressure', 'oxygen', 'time', 'ends at', 'tissue nitrogen', 'ratio'], rows));
  print(
    `  ${kilopascals(result.tissuePa[0] ?? 0)} / ${kilopascals(model.suitPressurePa)} in the suit = ${result.ratio.toFixed(3)}; limit ${result.limit}: ${
      result.holds ? `holds, ${result.margin.toFixed(3)} below` : `above by ${(-result.margin).toFixed(3)}`
    }`,
  );
  print(`  ${neededWords(result.stillNeededS)}`);
  for (const block of blocks ?? []) {
    const restarts =
      block.restarts === 0
        ? ''
        : `, restarted ${block.restarts === 1 ? 'once' : `${block.restarts} times`} by a long break`;
    print(
      `  oxygen from "${stages[block.firstStage]?.title ?? ''}": ${formatDuration(block.servedS)} served − ${formatDuration(block.owedS)} owed for breaks = ${formatDuration(block.countsS)} that counts${restarts}`,
    );
  }
  if (protocol.breakRule !== null)
    print(
      `  break rule: ${protocol.breakRule.paybackRatio} for 1 up to ${formatDuration(protocol.breakRule.longestBreakS)} (${protocol.breakRule.source})`,
    );
  print(
    tableText(
      ['what if', 'end', 'ratio', 'margin', 'oxygen still needed'],
      sensitivity.map(({ figure, end, ratio, margin, stillNeededS }) => [
        figure,
        end,
        ratio.toFixed(3),
        margin.toFixed(3),
        stillNeededS === null ? 'never reached' : formatDuration(Math.ceil(stillNeededS / 60) * 60),
      ]),
    ),
  );
  for (const note of result.notes) print(`  ${note}`);
}

function neededWords(stillNeededS: number | null): string {
  if (stillNeededS === null) return 'oxygen at rest never brings it to the limit';
  if (stillNeededS === 0) return 'no more oxygen is needed';
  return `${formatDuration(Math.ceil(stillNeededS / 60) * 60)} more oxygen at rest would bring it to the limit`;
}

function kilopascals(pressurePa: number): string {
  return `${(pressurePa / 1000).toFixed(1)} kPa`;
}
