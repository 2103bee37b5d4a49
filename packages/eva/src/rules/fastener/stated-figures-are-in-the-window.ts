import { plannedDrives } from '../../fastener/planned-drives.ts';
import { defineRule } from '../define-rule.ts';
import { OUT } from '../example-opening.ts';

const campaign = (torque: number, turns: number): string => `
hardware driver kind=power-tool at=EV1 { property torque-least "2 N·m"; property torque-most "60 N·m"; property torque-accuracy 0.05; property turn-resolution 0.1 }
hardware b1 kind=bolt at=bay state=started torque="${torque} N·m" turns=${turns} {
    property thread "M10"; property engagement "20 mm"; property snug-turns 0.7; property nut-factor 0.15
    property nut-factor-least 0.13; property nut-factor-most 0.17
    property preload-least "15 kN"; property preload-most "27 kN"; property drive-source "invented"
}
task turn rank=1 eva=day { stint turn-it who=EV1 at=bay { drive b1 with=driver } }
`;
const timeline = `${OUT}EV1 0:10-0:14 porch > bay
EV1 0:14-0:20 turn/turn-it
EV1 0:20-0:24 bay > porch
EV2 0:24-0:29 in
EV1 0:29-0:34 in
hatch 0:34-0:39`;

export const statedFiguresAreInTheWindow = defineRule({
  title: 'Turns and torque that are read out agree with what thread, friction and preload give',
  broken: 'Turns or torque that are read out lie outside the window worked out for the fastener',
  severity: 'error',
  why: 'The crew compares what the tool shows with what is read out. A figure from another drawing makes a good drive look bad, or a bad one good.',
  source: '[SHIGLEY9]',
  *check(facts) {
    const planned = new Set(facts.evas.flatMap(({ eva }) => eva.stints.map(({ stint }) => stint)));
    for (const { window, basis, piece, stint, step, turns, torqueNm } of plannedDrives(
      facts.campaign,
      facts.hardware,
    )) {
      if (window === null || basis !== 'joint' || !planned.has(stint.key)) continue;
      const where = { stint: stint.key, step, span: stint.steps[step]?.span ?? stint.span };
      const outside = (value: number | null, low: number, high: number): boolean =>
        value !== null && (value < low || value > high);
      if (outside(torqueNm, window.torqueNm.low, window.torqueNm.high)) {
        yield {
          where,
          why: `${piece.title}: ${torqueNm} N·m is read out; ${one(window.torqueNm.low)} to ${one(window.torqueNm.high)} N·m follows from its thread, friction and preload`,
          mend: 'compare the drawing with the properties of the fastener',
        };
      }
      if (outside(turns, window.turns.low, window.turns.high)) {
        yield {
          where,
          why: `${piece.title}: ${turns} turns are read out; ${one(window.turns.low)} to ${one(window.turns.high)} follow from its engagement and pitch`,
          mend: 'compare the drawing with the properties of the fastener',
        };
      }
    }
  },
  examples: {
    violates: { campaign: campaign(45, 14), timeline },
    satisfies: { campaign: campaign(30, 14), timeline },
  },
});

function one(value: number): string {
  return String(Math.round(value * 10) / 10);
}
