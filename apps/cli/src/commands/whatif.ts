/** `handrail whatif FILE TIMELINE --eva E --response ID --at 2:10`: what trouble at one minute costs, and the way home then. */
import { allResponses, type AnyResponse } from '@handrail/eva/response/any-response';
import { type WhatIf, whatIf } from '@handrail/eva/response/what-if';
import { nearestName } from '@handrail/eva/campaign/problem/nearest-name';
import { formatDuration, formatPet } from '@handrail/quantity/time';
import { whatif } from '@handrail/wire/answers/whatif';
import type { Command } from 'commander';
import { evaNamed } from '../eva-named.ts';
import { EXIT, type ExitCode } from '../exit-code.ts';
import { ExitError } from '../exit-error.ts';
import { loadCampaign } from '../load-campaign.ts';
import { loadTimeline } from '../load-timeline.ts';
import { petNamed } from '../pet-named.ts';
import { print } from '../terminal/output.ts';
import { printAnswer } from '../terminal/print-answer.ts';
import { responseShown, whatIfShown } from '../way-home-answer.ts';

interface WhatIfOptions {
  readonly eva?: string;
  readonly response?: string;
  readonly at?: string;
  readonly list?: boolean;
  readonly json?: boolean;
}

export function register(program: Command): void {
  program
    .command('whatif')
    .description('apply a response to one minute of a plan: what is delayed, what breaks, the way home then')
    .argument('<file>', 'campaign file')
    .argument('<timeline>', 'timeline of it')
    .option('--eva <eva>', 'the EVA; may be left out where there is one')
    .option('--response <id>', 'a response of the campaign or of the stock set')
    .option('--at <pet>', 'when it happens, PET h:mm')
    .option('--list', 'every response that there is')
    .option('--json', 'the same as JSON')
    .action((file: string, timelineFile: string, options: WhatIfOptions) => {
      const { campaign, hardware, library } = loadCampaign(file);
      const timeline = loadTimeline(timelineFile, campaign);
      const responses = allResponses(campaign);
      const document = { campaign: campaign.id, documentHash: campaign.documentHash };
      if (options.list === true) {
        if (options.json === true) {
          printAnswer(whatif, EXIT.fine, { ...document, responses: responses.map(responseShown), found: null });
          return;
        }
        for (const one of responses) {
          print(`${one.id.padEnd(28)} ${one.from.padEnd(9)} ${one.title}: ${one.trigger}`);
        }
        return;
      }
      if (options.response === undefined || options.at === undefined) {
        throw new ExitError(
          EXIT.badInput,
          'name a response and a time: --response ID --at 2:10 (--list lists the responses)',
        );
      }
      const response = responses.find((one) => one.id === options.response);
      if (response === undefined) {
        const near = nearestName(
          options.response,
          responses.map((one) => one.id),
        );
        throw new ExitError(
          EXIT.badInput,
          `no response is called ${options.response}${near === null ? '' : `; did you mean ${near}?`}`,
        );
      }
      const [only, ...others] = timeline.evas;
      if (options.eva === undefined && (only === undefined || others.length > 0)) {
        throw new ExitError(EXIT.badInput, `name the EVA: --eva ${timeline.evas.map((one) => one.eva).join(' or ')}`);
      }
      const eva = options.eva === undefined ? (only as NonNullable<typeof only>) : evaNamed(timeline, options.eva);
      const found = whatIf(campaign, hardware, library, timeline, eva, response, petNamed(options.at, eva));
      const [code, why] = verdictOf(found);
      if (options.json === true) {
        printAnswer(whatif, code, { ...document, responses: [responseShown(response)], found: whatIfShown(found) });
      } else printWhatIf(found);
      if (code !== EXIT.fine) throw new ExitError(code, why);
    });
}

function verdictOf(found: WhatIf): readonly [ExitCode, string] {
  if (found.notHere !== null) return [EXIT.badInput, found.notHere];
  const noWay = found.response.leadsTo !== null && (found.home?.way.blocked.length ?? 0) > 0;
  const isShort = (found.home?.marginS ?? 0) < 0;
  if (noWay || isShort || found.missingKit.length > 0 || found.consequences.some((one) => one.breaks)) {
    return [EXIT.findings, ''];
  }
  return found.cannotTell.length > 0 ? [EXIT.cannotTell, found.cannotTell.join('; ')] : [EXIT.fine, ''];
}

function printWhatIf(found: WhatIf): void {
  const { response } = found;
  print(
    `${response.title}, EVA ${found.eva}, PET ${formatPet(found.petS)}  (${response.from === 'stock' ? 'stock response' : 'response of the campaign'})`,
  );
  print(`  seen by    ${response.trigger}`);
  printSteps(response);
  if (response.timeS !== null) {
    print(
      `  takes      ${formatDuration(response.timeS.likely)}; 90 % are done in ${formatDuration(response.timeS.high)}, which counts below`,
    );
  }
  if (response.outcome !== null) print(`  outcome    ${response.outcome}`);
  for (const one of found.responding)
    print(`  who        ${one.person} at ${one.place}${one.stint === null ? '' : `, in ${one.stint}`}`);
  for (const id of found.missingKit) print(`  missing    ${id}: nobody outside has it, nor is it where they are`);
  if (found.bothInS !== null) {
    const lateS = found.bothInS.thenS - found.bothInS.plannedS;
    print(
      `  both in    PET ${formatPet(found.bothInS.thenS)}${lateS < 1 ? ', as planned: the waits take it up' : `, ${formatDuration(lateS)} later than planned`}`,
    );
    print(
      `  later      ${found.delayed.length === 0 ? 'no stint' : `${found.delayed.length} stints, first ${found.delayed[0]?.stint ?? ''}`}`,
    );
  }
  for (const one of found.consequences) {
    const left =
      one.marginS === null
        ? ''
        : ` (${one.marginS < 0 ? 'short by' : 'left'} ${formatDuration(Math.abs(one.marginS))})`;
    print(`  ${(one.breaks ? 'BREAKS' : 'holds').padEnd(10)} ${one.words}${left}`);
  }
  if (found.home !== null) {
    const { way, marginS, startS } = found.home;
    const then = way.totalS === null ? `no way home: ${way.words}` : way.words;
    print(
      `  ${(response.leadsTo === null ? 'way home' : response.leadsTo).padEnd(10)} from PET ${formatPet(startS)}${way.arm === 'dead' ? ', arm dead' : ''}: ${then}`,
    );
    if (marginS !== null)
      print(`  ${(marginS < 0 ? 'SHORT BY' : 'margin').padEnd(10)} ${formatDuration(Math.abs(marginS))} to the limit`);
  }
  print(`  ${response.prevails}`);
}

function printSteps(response: AnyResponse): void {
  response.steps.forEach((step, at) => {
    print(`  ${at === 0 ? 'do' : '  '}         ${at + 1}. ${step}`);
  });
}
