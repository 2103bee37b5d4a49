/**
 * One person out for six hours in an invented suit, worked out by hand from the published relations: 362 min at 200 W and 8 min at 400 W,
 * off vehicle supplies 10 min before PET 0.
 */
import { readCampaign } from '@handrail/eva/campaign/read-campaign';
import type { Campaign } from '@handrail/eva/campaign/campaign';
import { standardLibrary } from '@handrail/eva/kinds/kinds-library';
import { EXAMPLE_OPENING } from '@handrail/eva/rules/example-opening';
import { exampleSuit, inSuit, SIX_HOURS_OUT } from '@handrail/eva/rules/example-suit';
import { evaSupplies, type PersonSupplies } from '@handrail/eva/suit/eva-supplies';
import { SUPPLY_NAMES, petOfLimit } from '@handrail/eva/suit/supply-curve';
import { sumSentence } from '@handrail/eva/suit/supplies-in-words';
import { readTimelineNotation } from '@handrail/eva/timeline/timeline-notation';
import { describe, expect, it } from 'vitest';

function campaignOf(text: string): Campaign {
  const { campaign, problems } = readCampaign([{ name: 'c.kdl', text: EXAMPLE_OPENING + text }], standardLibrary);
  if (campaign === null) throw new Error(problems.map(({ what }) => what).join('; '));
  return campaign;
}

function suppliesIn(text: string, timeline = SIX_HOURS_OUT): PersonSupplies {
  const campaign = campaignOf(text);
  const [eva] = readTimelineNotation(timeline, campaign).evas;
  const [reading] = eva === undefined ? [] : evaSupplies(campaign, standardLibrary, eva);
  if (reading?.known !== true) throw new Error(reading?.reason ?? 'nobody takes part');
  return reading;
}

const reading = suppliesIn(inSuit(exampleSuit('worn')));
const used = (supply: (typeof SUPPLY_NAMES)[number]) => reading.use.end[supply].likely.used;

/** J of metabolic heat. */
const BODY_J = 200 * 362 * 60 + 400 * 8 * 60;
/** Row 0.85 of the table, kcal per litre STPD. [LUSK24] */
const KCAL_PER_L = 4.862;
const LITRES = BODY_J / 4184 / KCAL_PER_L;

describe('six hours out, by hand', () => {
  it('take the efforts that the suit gives to passing, moving, working and waiting', () => {
    expect(reading.byEffort.map(({ effort, durationS }) => [effort, durationS / 60])).toEqual([
      ['light', 362],
      ['hard', 8],
    ]);
  });

  it('use oxygen by the energy table, and leakage', () => {
    // 31.998 g and 22.414 L a mole; 2 g/h for 370 min.
    expect(used('oxygen')).toBeCloseTo((LITRES / 22.414) * 0.031998 + (0.002 * 370) / 60, 4);
  });

  it('fill the absorber by the respiratory quotient', () => {
    expect(used('carbon-dioxide')).toBeCloseTo((LITRES / 22.414) * 0.85 * 0.0440095, 4);
  });

  it('use water for the heat of body, loads and absorber', () => {
    const absorbed = (LITRES / 22.414) * 0.85 * 0.0440095;
    expect(used('water')).toBeCloseTo((BODY_J + 40 * 370 * 60 + absorbed * 2e6) / 2.5e6, 3);
  });

  it('drain the battery by its one load, whose reserve comes at PET 12:35', () => {
    expect(used('battery')).toBeCloseTo(40 * 370 * 60, 6);
    // (600 Wh × 0.9 − 30 Wh) / 40 W = 12 h 45 min from ten minutes before PET 0.
    expect(petOfLimit(reading.use.curves.battery, 'likely')).toBeCloseTo((12 * 60 + 35) * 60, 6);
  });

  it('are printed as sums that add up to the last digit', () => {
    for (const supply of SUPPLY_NAMES) {
      for (const supplyCase of ['worst', 'likely', 'best'] as const) {
        const sentence = sumSentence(reading, supply, supplyCase);
        const [parts = '', total = ''] = sentence.split(': ')[1]?.split(' = ') ?? [];
        const sum = [...parts.matchAll(/(\d+(?:\.\d+)?) (?:kg|Wh)/g)].reduce((all, [, one]) => all + Number(one), 0);
        expect(sum).toBeCloseTo(Number.parseFloat(total), 9);
        const [start, minus, left] = (sentence.split('; ')[1] ?? '').match(/[\d.]+/g)?.map(Number) ?? [];
        expect((start ?? 0) - (minus ?? 0)).toBeCloseTo(left ?? Number.NaN, 9);
      }
    }
  });
});

describe('loads and gaps', () => {
  it('burn lamps while their window is open, with its pad', () => {
    const suit = exampleSuit('worn').replace(
      '    load fan',
      '    load lamps "10 W" exact=#true when=dark source="invented"\n    load fan',
    );
    const dark = 'window dark pad="2 min" { interval "2031-05-01T10:30:00Z" "2031-05-01T11:00:00Z" }\n';
    // 30 min and two pads of 2 min at 10 W more.
    expect(suppliesIn(dark + inSuit(suit)).use.end.battery.likely.used).toBeCloseTo(40 * 370 * 60 + 10 * 34 * 60, 6);
  });

  it('cannot be told where a person is in two places at once', () => {
    const campaign = campaignOf(inSuit(exampleSuit('worn')));
    const [eva] = readTimelineNotation(`${SIX_HOURS_OUT}\nEV3 0:07-0:12 porch > side`, campaign).evas;
    expect(eva === undefined ? [] : evaSupplies(campaign, standardLibrary, eva)).toEqual([
      { known: false, person: 'EV3', reason: 'EV3 has two things to do from 420 s' },
    ]);
  });
});
