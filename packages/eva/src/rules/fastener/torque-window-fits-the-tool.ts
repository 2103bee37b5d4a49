import { plannedDrives } from '../../fastener/planned-drives.ts';
import { toolFit } from '../../fastener/tool-fit.ts';
import { defineRule } from '../define-rule.ts';
import { OUT } from '../example-opening.ts';

const campaign = (tolerance: string): string => `
hardware driver kind=power-tool at=EV1 { property torque-least "10 N·m"; property torque-most "34 N·m" }
hardware b1 kind=bolt at=bay state=started torque="36 N·m" turns=10 fits="driver" { property turns-tolerance 1; property torque-tolerance "${tolerance}" }
task turn rank=1 eva=day { stint turn-it who=EV1 at=bay { drive b1 with=driver } }
`;
const timeline = `${OUT}EV1 0:10-0:14 porch > bay
EV1 0:14-0:20 turn/turn-it
EV1 0:20-0:24 bay > porch
EV2 0:24-0:29 in
EV1 0:29-0:34 in
hatch 0:34-0:39`;

export const torqueWindowFitsTheTool = defineRule({
  title: 'The planned tool has a setting within the torque window of what it drives',
  broken: 'A tool has no setting that the torque window allows',
  severity: 'error',
  why: 'A fastener driven below its window holds too little, one above it may be past its proof load. The setting must lie within, tool error included.',
  source: '[SHIGLEY9]',
  *check(facts) {
    const planned = new Set(facts.evas.flatMap(({ eva }) => eva.stints.map(({ stint }) => stint)));
    for (const drive of plannedDrives(facts.campaign, facts.hardware)) {
      if (!planned.has(drive.stint.key)) continue;
      const span = drive.stint.steps[drive.step]?.span ?? drive.stint.span;
      const where = { stint: drive.stint.key, step: drive.step, span };
      if (drive.refused !== null) {
        yield { where, why: `${drive.piece.title}: ${drive.refused}`, mend: 'mend the figures of the fastener' };
        continue;
      }
      if (drive.window === null) {
        // A fastener that says nothing of its window is the affair of turns-and-torque-are-stated.
        const saysSome = Object.keys(drive.piece.properties).some((name) =>
          /^(preload|nut-factor|engagement|snug-turns|turns-tolerance|torque-tolerance)/.test(name),
        );
        if (saysSome)
          yield {
            severity: 'unknown',
            where,
            why: `no window for ${drive.piece.title}: ${drive.missing.join(', ')} not stated`,
          };
        continue;
      }
      if (drive.tool === null) continue;
      const fit = toolFit(drive.window, drive.tool);
      if (fit.fits === 'no') yield { where, why: `${drive.piece.title}: ${fit.why}`, mend: 'name another tool with=…' };
      else if (fit.fits === 'unknown')
        yield { severity: 'unknown', where, why: `${drive.piece.title}: ${fit.missing} is not stated` };
    }
  },
  examples: {
    violates: { campaign: campaign('1 N·m'), timeline },
    satisfies: { campaign: campaign('3 N·m'), timeline },
  },
});
