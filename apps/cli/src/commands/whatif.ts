/** `handrail whatif FILE [TIMELINE] --eva E --response ID --at 2:10`: what trouble at one minute costs, and the way home then. */
import { allResponses, type AnyResponse } from '@handrail/eva/response/any-response';
import { responseKitList } from '@handrail/eva/response/kit-list';
import { isBroken, type WhatIf, whatIf } from '@handrail/eva/response/what-if';
import { whatIfThroughout } from '@handrail/eva/response/what-if-throughout';
import { wayHomeSurface } from '@handrail/eva/wayhome/way-home-surface';
import { nearestName } from '@handrail/eva/campaign/problem/nearest-name';
import { whatif } from '@handrail/wire/answers/whatif';
import type { Command } from 'commander';
import { evaNamed } from '../eva-named.ts';
import { EXIT, type ExitCode } from '../exit-code.ts';
import { ExitError } from '../exit-error.ts';
import { loadCampaign } from '../load-campaign.ts';
import { petNamed } from '../pet-named.ts';
import { givenOrPlanned } from '../plan/given-or-planned.ts';
import { print } from '../terminal/output.ts';
import { printAnswer } from '../terminal/print-answer.ts';
import { kitShown, occasionShown, responseShown, whatIfShown } from '../way-home-answer.ts';
import { kitTable } from '../kit-table.ts';
import { occasionsTable } from '../occasions-table.ts';
import { whatIfLines } from '../what-if-lines.ts';

interface WhatIfOptions {
  readonly eva?: string;
  readonly response?: string;
  readonly at?: string;
  readonly who?: string;
  readonly list?: boolean;
  readonly kit?: boolean;
  readonly json?: boolean;
}

export function register(program: Command): void {
  program
    .command('whatif')
    .description('apply a response to one minute of a plan: what is delayed, what breaks, the way home then')
    .argument('<file>', 'campaign file')
    .argument('[timeline]', 'timeline of it; without one it is planned')
    .option('--eva <eva>', 'the EVA; may be left out where there is one')
    .option('--response <id>', 'a response of the campaign or of the stock set')
    .option('--at <pet>', 'when it happens, PET h:mm; left out: at every occasion of the EVA')
    .option('--who <person>', 'who has the trouble; may be left out: the one for whom it is worse')
    .option('--list', 'every response that there is')
    .option('--kit', 'the kit of all responses of the EVA, and where it is when it may be needed')
    .option('--json', 'the same as JSON')
    .action(async (file: string, timelineFile: string | undefined, options: WhatIfOptions) => {
      const loaded = loadCampaign(file);
      const { campaign, hardware, library } = loaded;
      const responses = allResponses(campaign);
      const document = { campaign: campaign.id, documentHash: campaign.documentHash };
      if (options.list === true) {
        if (options.json === true) {
          printAnswer(whatif, EXIT.fine, {
            ...document,
            responses: responses.map(responseShown),
            kit: [],
            occasions: [],
            found: null,
          });
          return;
        }
        for (const one of responses) {
          print(`${one.id.padEnd(28)} ${one.from.padEnd(9)} ${one.title}: ${one.trigger}`);
        }
        return;
      }
      // The names are looked at first: whoever mistypes one need not wait for a plan.
      const response = options.kit === true ? null : responseNamed(options.response, responses);
      const timeline = await givenOrPlanned(loaded, timelineFile);
      if (response === null) {
        const flown = options.eva === undefined ? timeline.evas : [evaNamed(timeline, options.eva)];
        const kit = flown.flatMap((eva) =>
          kitShown(eva.eva, responseKitList(campaign, wayHomeSurface(campaign, hardware, library, timeline, eva))),
        );
        const code = kit.some((one) => one.notAtHand !== null) ? EXIT.findings : EXIT.fine;
        if (options.json === true)
          printAnswer(whatif, code, { ...document, responses: [], kit, occasions: [], found: null });
        else print(kitTable(kit));
        if (code !== EXIT.fine) throw new ExitError(code, '');
        return;
      }
      const [only, ...others] = timeline.evas;
      if (options.eva === undefined && (only === undefined || others.length > 0)) {
        throw new ExitError(EXIT.badInput, `name the EVA: --eva ${timeline.evas.map((one) => one.eva).join(' or ')}`);
      }
      const eva = options.eva === undefined ? (only as NonNullable<typeof only>) : evaNamed(timeline, options.eva);
      const who = options.who ?? null;
      const outside = campaign.people.filter((person) => person.role === 'outside').map((person) => person.id);
      if (who !== null && !outside.includes(who)) {
        throw new ExitError(EXIT.badInput, `nobody outside is called ${who}; there are ${outside.join(', ')}`);
      }
      if (options.at === undefined) {
        const all = whatIfThroughout(campaign, hardware, library, timeline, eva, response, who);
        const code = all.some(({ broken }) => broken) ? EXIT.findings : EXIT.fine;
        const occasions = all.map(occasionShown);
        if (options.json === true) {
          const responses = [responseShown(response)];
          printAnswer(whatif, code, { ...document, responses, kit: [], occasions, found: null });
        } else print(occasionsTable(occasions));
        if (code !== EXIT.fine) throw new ExitError(code, '');
        return;
      }
      const found = whatIf(campaign, hardware, library, timeline, eva, response, petNamed(options.at, eva), who);
      const [code, why] = verdictOf(found);
      if (options.json === true) {
        printAnswer(whatif, code, {
          ...document,
          responses: [responseShown(response)],
          kit: [],
          occasions: [],
          found: whatIfShown(found),
        });
      } else for (const line of whatIfLines(found)) print(line);
      if (code !== EXIT.fine) throw new ExitError(code, why);
    });
}

function verdictOf(found: WhatIf): readonly [ExitCode, string] {
  if (found.notHere !== null) return [EXIT.badInput, found.notHere];
  if (isBroken(found)) return [EXIT.findings, ''];
  return found.cannotTell.length > 0 ? [EXIT.cannotTell, found.cannotTell.join('; ')] : [EXIT.fine, ''];
}

function responseNamed(id: string | undefined, responses: readonly AnyResponse[]): AnyResponse {
  if (id === undefined) {
    throw new ExitError(EXIT.badInput, 'name a response: --response ID --at 2:10 (--list lists the responses)');
  }
  const response = responses.find((one) => one.id === id);
  if (response !== undefined) return response;
  const near = nearestName(
    id,
    responses.map((one) => one.id),
  );
  throw new ExitError(
    EXIT.badInput,
    `no response is called ${id}${near === null ? '; --list lists them' : `; did you mean ${near}?`}`,
  );
}
