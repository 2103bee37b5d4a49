/**
 * The stamp on a timeline: replay, every order, every duration within D, ways home in the listed modes, supplies at the quantile, every
 * rule, the slip, and the input level that all of it rests on, in one verdict with one hash. The parts come from where each is worked
 * out; `proof/claim` puts them together.
 *
 * @checked tests/scenarios/proof/stamp.test.ts
 */
import { inputLevel } from '../campaign/input-level.ts';
import type { Finding } from '../finding/finding.ts';
import type { ClaimParts } from '../proof/claim/claim-parts.ts';
import { prove, type Stamp } from '../proof/claim/prove.ts';
import type { ProofOptions } from '../proof/claim/prove-eva.ts';
import { proved } from '../proof/claim/prove-finding.ts';
import { rules } from '../rules/rules.generated.ts';
import { runRules } from '../rules/run-rules.ts';
import { elementAge } from '../sky/element-age.ts';
import { SLIP_CHECKS, slipFindings } from '../slip/slip-findings.ts';
import type { Timeline } from '../timeline/timeline.ts';
import { type Mode, MODES } from '../wayhome/way-home-state.ts';
import { wayHomeSurface } from '../wayhome/way-home-surface.ts';
import { factsOf } from './facts-of.ts';
import type { OpenedCampaign } from './open-campaign.ts';
import { marginFindings, modeMargins } from './stamp-margins.ts';
import { supplyFindings, supplyMargins } from './stamp-supplies.ts';

/** Ways home and supplies are told at their 90 % quantile. */
const QUANTILE = 0.9;
/** Below it no limits, requests and safe stops are stated, and no way home can be told. */
const LEAST_LEVEL = 3;

export interface StampOptions extends ProofOptions {
  /** Modes of the way home whose margins are demanded; absent: all. */
  readonly modes?: readonly Mode[];
}

export function stampTimeline(opened: OpenedCampaign, timeline: Timeline, options: StampOptions = {}): Stamp {
  const { modes = MODES, ...proof } = options;
  return prove(opened.campaign, opened.hardware, timeline, proof, partsOf(opened, timeline, modes));
}

function partsOf(opened: OpenedCampaign, timeline: Timeline, modes: readonly Mode[]): ClaimParts {
  const { campaign, hardware, library } = opened;
  const facts = factsOf(opened, timeline);
  const margins = timeline.evas.flatMap((eva) =>
    modeMargins(wayHomeSurface(campaign, hardware, library, timeline, eva), modes),
  );
  const supplies = supplyMargins(facts);
  const level = inputLevel(campaign, hardware);
  const { orbit } = campaign.sky;
  return {
    requirements: [...rules, ...SLIP_CHECKS].map(({ id }) => id),
    findings: [
      // Waivers are held against the end of each EVA, not against the day of the check.
      ...runRules(facts, Number.POSITIVE_INFINITY),
      ...slipFindings({ campaign, hardware, library, timeline }).map((finding) => ({ ...finding, waiver: null })),
      ...marginFindings(margins),
      ...supplyFindings(campaign, supplies),
      ...levelFindings(level),
    ],
    margins,
    supplies,
    quantile: QUANTILE,
    level,
    dataAge:
      orbit === null
        ? []
        : timeline.evas.map((eva) => ({
            eva: eva.eva,
            days: elementAge(orbit.elements, eva.petZeroUtcMs + eva.bothInS * 1000).ageDays,
          })),
  };
}

function levelFindings({ level, title, missing }: ClaimParts['level']): readonly Finding[] {
  if (level >= LEAST_LEVEL) return [];
  return [
    proved('proof/input-level-suffices', {
      severity: 'unknown',
      title: `The campaign text reaches input level ${level} (${title}), and a stamp rests on level ${LEAST_LEVEL}`,
      why: `for level ${level + 1} is missing: ${missing.slice(0, 4).join('; ')}${missing.length > 4 ? ` and ${missing.length - 4} more` : ''}`,
      mend: 'state it; until then nothing is claimed of ways home, gates and limits',
    }),
  ];
}
