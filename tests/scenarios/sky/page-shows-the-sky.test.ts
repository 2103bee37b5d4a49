/** Light, coverage, weak field and the slip table on the page. */
import { page } from '@handrail/eva/brief/page';
import { standardLibrary } from '@handrail/eva/kinds/kinds-library';
import { ruleFacts } from '@handrail/eva/rules/rule-facts';
import { lightReport } from '@handrail/eva/sky/campaign/light-report';
import { slipTable } from '@handrail/eva/slip/slip-table';
import { wayHomeSurface } from '@handrail/eva/wayhome/way-home-surface';
import { describe, expect, test } from 'vitest';
import { plannedFulmar } from '../../support/planned-fulmar.ts';

describe('the page', () => {
  const { campaign, hardware, timeline } = plannedFulmar();
  const facts = ruleFacts(campaign, hardware, standardLibrary, timeline);
  const travel = new Map(facts.evas.map((eva) => [eva.eva.eva, eva.travel] as const));
  const light = lightReport(campaign)?.places ?? [];
  const text = page(
    {
      campaign,
      hardware,
      kinds: standardLibrary.kinds,
      timeline,
      findings: [],
      light,
      slips: slipTable({ campaign, hardware, library: standardLibrary, timeline }, [0, 1800]),
      homeSeconds: (eva, place, pace) => travel.get(eva)?.homeSeconds(place, pace) ?? null,
      wayHome: (eva) => wayHomeSurface(campaign, hardware, standardLibrary, timeline, eva),
      program: 'test',
      madeUtcMs: Date.UTC(2031, 8, 1),
    },
    { style: '', script: '' },
  );

  test('has a row of light for each place where somebody works, and no other', () => {
    const harvest = text.slice(text.indexOf('id="eva-harvest"'));
    const bands = harvest.slice(
      harvest.indexOf('class="light-bands"'),
      harvest.indexOf('</svg>', harvest.indexOf('class="light-bands"')),
    );
    const rows = [...bands.matchAll(/<text class="place"[^>]*>([^<]+)</g)].map((match) => match[1]);
    const worked = new Set(
      facts.evas[2]?.eva.stints.flatMap(({ stint }) =>
        (facts.stints.get(stint)?.roles ?? []).flatMap((role) => [role.at, role.to]),
      ),
    );
    const titles = campaign.vehicle.places.filter(({ id }) => worked.has(id)).map(({ title }) => title);
    expect(new Set(rows)).toEqual(new Set([...titles, 'Coverage gap', 'Weak magnetic field']));
    expect(rows).toHaveLength(titles.length + 2);
    // A picture for everybody needs the same in words.
    expect(bands).toContain('<title>Pump bay: night, PET');
    expect(harvest).toContain('Light, coverage and weak field as a table');
  });

  test('says that the weak field is a proxy', () => {
    expect(text).toContain('Weak field is a proxy: it measures no dose and knows no solar events.');
  });

  test('has a slip table for each EVA, with the last acceptable egress', () => {
    expect(text.match(/class="slip"/g)).toHaveLength(3);
    expect(text.match(/ast acceptable egress/g)?.length).toBeGreaterThanOrEqual(3);
  });

  test('says input level 4', () => {
    expect(text).toContain('Rests on input level 4 (orbit and bodies)');
  });

  test('light of a single place is no band on the home chart', () => {
    const chart = text.slice(text.indexOf('class="home-chart"'), text.indexOf('class="orbit-rows"'));
    expect(chart).toContain('Weak magnetic field: PET');
    expect(chart).not.toContain('Pump bay in sunlight');
  });
});
