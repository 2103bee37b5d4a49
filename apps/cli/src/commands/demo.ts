/** `handrail demo`: plans the Fulmar campaign, prints it, writes its timeline and page, and says where. What `npm start` runs. */
import { mkdirSync, writeFileSync } from 'node:fs';
import { join, relative } from 'node:path';
import { countFindings } from '@handrail/eva/finding/format-finding';
import { verdictSentence } from '@handrail/eva/brief/parts/verdict';
import { CAUTION } from '@handrail/eva/brief/brief-input';
import type { Command } from 'commander';
import { judgeTimeline } from '@handrail/eva/judge/judge-timeline';
import { loadCampaign } from '../load-campaign.ts';
import { EXAMPLES_FOLDER, IS_PACKED, OUT_FOLDER } from '../program-folders.ts';
import { printPlan } from '../plan/print-plan.ts';
import { searchPlan, stopSign } from '../plan/search-plan.ts';
import { writeTimeline } from '../plan/write-timeline.ts';
import { findingsText } from '../terminal/message-text.ts';
import { print } from '../terminal/output.ts';
import { textWidth, wrapText } from '../terminal/wrap-text.ts';
import { pageText } from '../write-page.ts';

/** Conflicts per EVA that the demo may spend; each EVA is proved best well within it or says that it is not. */
const BUDGET = 20_000;

export function register(program: Command): void {
  program
    .command('demo')
    .description('plan, check, draw and print the Fulmar campaign of examples/')
    .argument('[file]', 'campaign file; absent: the Fulmar example that comes with the program')
    .action(async (given: string | undefined) => {
      print(`${CAUTION}\n`);
      const file = given ?? join(EXAMPLES_FOLDER, 'fulmar.kdl');
      const loaded = loadCampaign(relative(process.cwd(), file) || file);
      const stop = stopSign(undefined);
      const plan = await searchPlan(loaded.campaign, loaded.hardware, {
        seed: 1,
        conflictBudget: BUDGET,
        shouldStop: stop.isUp,
      });
      stop.release();
      printPlan(loaded, plan, []);
      const madeUtcMs = Date.now();
      const findings = judgeTimeline(loaded, plan.timeline, madeUtcMs);
      print(`\n${findingsText(findings)}\n\n${countFindings(findings)}\n`);
      for (const eva of plan.timeline.evas) {
        const title = loaded.campaign.evas.find((candidate) => candidate.id === eva.eva)?.title ?? eva.eva;
        const about = findings.filter((finding) => finding.where.eva === eva.eva);
        print(wrapText(verdictSentence(eva, title, about), textWidth()));
      }
      mkdirSync(OUT_FOLDER, { recursive: true });
      const timelineFile = join(OUT_FOLDER, 'fulmar.timeline.json');
      const pageFile = join(OUT_FOLDER, 'fulmar.html');
      writeTimeline(timelineFile, plan.timeline);
      writeFileSync(pageFile, pageText(loaded, plan.timeline, findings, madeUtcMs));
      const here = (path: string): string => relative(process.cwd(), path) || path;
      print(`\nTimeline   ${here(timelineFile)}\nPage       ${here(pageFile)}   (open it in a browser)`);
      const next =
        given === undefined && IS_PACKED
          ? `handrail new first.kdl, or change a copy of ${here(file)} and handrail plan it`
          : `change a line of ${here(file)} and run it again, or: handrail help`;
      print(`Next       ${next}`);
    });
}
