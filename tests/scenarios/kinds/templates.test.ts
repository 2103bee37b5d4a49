import type { Stint } from '@handrail/eva/campaign/campaign';
import { readCampaign } from '@handrail/eva/campaign/read-campaign';
import { standardLibrary } from '@handrail/eva/kinds/kinds-library';
import { templates } from '@handrail/eva/kinds/templates.generated';
import { describe, expect, test } from 'vitest';
import { readText } from '../hardware/read-text.ts';

/** What the examples of the templates work on: invented, just enough to be read. */
const SITE = `handrail 1
library standard version="1"
campaign yard "Yard"
person EV1 role=outside
person EV2 role=outside
person IV role=inside
arm crane operator=IV start=parked {
    pose parked
    pose crane-deck place=deck
    pose crane-bay place=bay-4
    transfer parked crane-deck empty="3 min" loaded="5 min"
    transfer crane-deck crane-bay empty="3 min" loaded="5 min"
}
vehicle station "Station" hatch=porch {
    place porch
    place bay-4
    place deck
    place panel
    place foot
    place mast-foot
    place rack
    place spine-1
    place spine-2
    rail porch bay-4 minutes="3 min"
    rail porch deck minutes="3 min"
    rail porch panel minutes="3 min"
    rail porch foot minutes="3 min"
    rail porch mast-foot minutes="3 min"
    rail porch rack minutes="3 min"
    rail porch spine-1 minutes="3 min"
    rail porch spine-2 minutes="3 min"
}
eva day egress="2031-05-01T10:00:00Z"
`;
const HARDWARE: Readonly<Record<string, string>> = {
  'swap-box': `
hardware rails kind=bay at=bay-4
hardware old-unit kind=box at=rails state=fastened
hardware new-unit kind=box at=bag-1 state=stowed
hardware bag-1 kind=bag at=EV1
hardware b1 b2 kind=bolt of=old-unit at=bay-4 state=torqued turns=8
hardware b3 b4 kind=captive-fastener of=new-unit at=bay-4 state=released turns=8
hardware j1 kind=data-connector of=old-unit at=bay-4 state=mated
hardware j2 kind=data-connector of=new-unit at=bay-4 state=demated
hardware lid kind=cover at=bay-4 state=closed
hardware driver kind=power-tool at=EV1`,
  'route-harness': `
hardware bag-2 kind=bag at=EV2
hardware harness kind=cable at=bag-2 state=stowed
hardware t1 t2 kind=tie at=panel state=loose
hardware j1 kind=data-connector at=panel state=demated
hardware j2 kind=data-connector at=mast-foot state=demated
hardware c2 kind=cap at=mast-foot state=fitted`,
  'fit-appendage': `
hardware mast kind=mast at=EV1 state=free { state deployment folded }
hardware b1 b2 kind=captive-fastener of=mast at=foot state=released turns=8
hardware j1 kind=data-connector of=mast at=foot state=demated
hardware s1 kind=socket at=foot
hardware r1 kind=foot-restraint at=s1
hardware driver kind=power-tool at=EV1`,
  'move-restraint': `
hardware socket-a kind=socket at=spine-1
hardware socket-b kind=socket at=spine-2
hardware r1 kind=foot-restraint at=socket-a`,
  'retrieve-tray': `
hardware bag-2 kind=bag at=EV2
hardware tray-1 kind=tray at=rack state=fastened { state lid open }
hardware l1 l2 kind=latch of=tray-1 at=rack state=latched`,
  'ride-arm': `
hardware spare kind=box at=deck state=parked
hardware s1 kind=socket at=bay-4
hardware r1 kind=foot-restraint at=s1`,
};

/** A stint without what only says where it was written. */
function withoutPlaces(stint: Stint): unknown {
  return JSON.parse(
    JSON.stringify({ ...stint, template: null }, (key, value: unknown) => (key === 'span' ? undefined : value)),
  );
}

describe.each(templates.map((template) => [template.name, template] as const))('template %s', (name, template) => {
  const task = (inside: string): string => `${HARDWARE[name] ?? ''}\ntask work rank=1 {\n${inside}\n}`;

  test('its example stands for exactly the text beside it', () => {
    const used = readText(task(template.example.use), SITE).campaign.tasks.flatMap((one) => one.stints);
    const written = readText(task(template.example.expands), SITE).campaign.tasks.flatMap((one) => one.stints);
    expect(used.length).toBeGreaterThan(0);
    expect(used.map(withoutPlaces)).toEqual(written.map(withoutPlaces));
    expect(used.every((stint) => stint.template === name)).toBe(true);
  });

  test('nothing in its example is left open', () => {
    const { model } = readText(task(template.example.use), SITE);
    expect([...model.effects.values()].flatMap((one) => one.unknowns.map((open) => open.words))).toEqual([]);
  });

  test('an inner node that names no stint of it is refused', () => {
    const use = template.example.use.replace(/\s*\{[^]*\}\s*$/, '');
    const text = SITE + task(`${use} { nowhere { minutes 5 } }`);
    const { campaign, problems } = readCampaign([{ name: 'test.kdl', text }], standardLibrary, { templates });
    expect(campaign).toBeNull();
    expect(problems.map((one) => one.what)).toContain(`template ${name} has no stint "nowhere"`);
  });
});

test('what stands in an inner node is added to that stint of the template', () => {
  const { campaign } = readText(
    `${HARDWARE['move-restraint']}
task work rank=1 {
    use move-restraint mv who=EV1 restraint=r1 from=socket-a at=spine-1 to=socket-b to-at=spine-2 {
        place { inspect spine-2; minutes 7; caution "Mind the panel edge" }
    }
}`,
    SITE,
  );
  const stint = campaign.tasks[0]?.stints[1];
  expect(stint?.steps.map((step) => step.verb)).toEqual(['seat', 'inspect']);
  expect(stint?.duration.agreedS).toBe(7 * 60);
  expect(stint?.caution).toBe('Mind the panel edge');
});

test('a template without what it needs is refused, with what it is', () => {
  const text = `${SITE}${HARDWARE['move-restraint']}
task work rank=1 { use move-restraint mv who=EV1 restraint=r1 from=socket-a to=socket-b to-at=spine-2 }`;
  const { problems } = readCampaign([{ name: 'test.kdl', text }], standardLibrary, { templates });
  expect(problems.map((one) => `${one.what}: ${one.expected}`)).toContain(
    'template move-restraint needs "at": Place of that socket.',
  );
});
