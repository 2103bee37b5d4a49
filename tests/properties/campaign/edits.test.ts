import { readdirSync, readFileSync } from 'node:fs';
import { format, parse } from '@bgotink/kdl';
import * as fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import {
  findPaths,
  insertNode,
  nodeAt,
  pathOfSpan,
  removeNode,
  setProperty,
} from '@handrail/eva/campaign/edit/edit-document';
import type { Pin } from '@handrail/eva/campaign/campaign';
import { addPin, type NewPin, removePin, replacePins } from '@handrail/eva/campaign/edit/edit-pins';
import { applyEdit, type CampaignText } from '@handrail/eva/campaign/edit/text-edit';
import { writeValue } from '@handrail/eva/campaign/edit/write-value';
import { ProblemList } from '@handrail/eva/campaign/problem/problem';
import { readCampaign } from '@handrail/eva/campaign/read-campaign';
import { parseFile } from '@handrail/eva/campaign/text/parse-file';
import { standardLibrary } from '@handrail/eva/kinds/kinds-library';

const EXAMPLES = readdirSync('examples')
  .filter((file) => file.endsWith('.kdl'))
  .map((file) => [file, readFileSync(`examples/${file}`, 'utf8')] as const);
const REJECTS = readdirSync('tests/rejects/campaigns')
  .filter((file) => file.endsWith('.kdl'))
  .map((file) => [file, readFileSync(`tests/rejects/campaigns/${file}`, 'utf8')] as const);

const parsed = (text: string) => parseFile('c.kdl', text, new ProblemList());
const HEAD = '\ufeffhandrail 1\r\ncampaign c "C" // the title\r\neva one egress="2031-09-14T11:40:00Z"\r\n';
const LAYOUTS = [
  ...EXAMPLES.map(([, text]) => text).filter((text) => text.length < 2000),
  HEAD,
  `${HEAD}\r\n/* before */ task t /* inside */ rank=1 \\\r\n   eva=one {  // open\r\n  stint s who=EV1 { minutes 10 } // close\r\n  // end\r\n}\r\npin "t/s" start="0:10" // dragged\r\n`,
  `handrail 1; campaign c; eva one egress="2031-09-14T11:40:00Z" { out EV1 "8 min"; in EV1 "6 min"; }`,
  '/-gone { x }\nhandrail 1\ncampaign c /-"no" "C"\n\n\ntask t { stint s who=EV1 { minutes 10; }; stint u who=EV2 { minutes 1 }\n}',
];

describe('the text survives', () => {
  test.each([...EXAMPLES, ...REJECTS])('parse, then print: every byte of %s', (_, text) => {
    const file = parsed(text);
    expect(file.source.text).toBe(text);
    if (file.document !== null) expect(format(file.document)).toBe(text);
  });

  test('any value is read back as it was written', () => {
    fc.assert(
      fc.property(fc.oneof(fc.string({ unit: 'binary' }), fc.double(), fc.boolean(), fc.constant(null)), (value) => {
        const node = parse(`n k=${writeValue(value)} ${writeValue(value)}`).nodes[0];
        expect(node?.getProperty('k')).toEqual(value);
        expect(node?.getArgument(0)).toEqual(value);
      }),
      { numRuns: 2000, seed: 7 },
    );
  });
});

describe('edits', () => {
  const someEdit = fc.record({
    layout: fc.integer({ min: 0, max: LAYOUTS.length - 1 }),
    node: fc.nat(),
    what: fc.constantFrom('set', 'set', 'unset', 'insert-after', 'insert-inside', 'insert-end', 'remove'),
    value: fc.oneof(fc.string(), fc.integer(), fc.boolean()),
  });

  test('change one thing, leave the rest, and are taken back to the byte', () => {
    fc.assert(
      fc.property(someEdit, ({ layout, node: pick, what, value }) => {
        const text = LAYOUTS[layout] as string;
        const file = parsed(text);
        const paths = findPaths(file, () => true);
        const path = paths[pick % paths.length] ?? [0];
        const before = paths.length;
        const subtree = paths.filter((one) => path.every((index, at) => one[at] === index)).length;
        const edit =
          what === 'set'
            ? setProperty(file, path, 'note', value)
            : what === 'unset'
              ? setProperty(file, path, 'who', null)
              : what === 'remove'
                ? removeNode(file, path)
                : insertNode(
                    file,
                    'marker 1 x=2',
                    what === 'insert-end' ? 'end' : what === 'insert-after' ? { after: path } : { inside: path },
                  );
        const files = [{ name: 'c.kdl', text }];
        const after = applyEdit(files, edit);
        const again = parsed(after.files[0]?.text ?? '');
        expect(again.document, after.files[0]?.text).not.toBeNull();
        const nodes = findPaths(again, () => true).length;
        if (what === 'remove') expect(nodes).toBe(before - subtree);
        else if (what.startsWith('insert')) {
          expect(nodes).toBe(before + 1);
          const [marker] = findPaths(again, (one) => one.name.name === 'marker');
          expect(marker?.length).toBe(what === 'insert-end' ? 1 : path.length + (what === 'insert-inside' ? 1 : 0));
        } else {
          expect(nodes).toBe(before);
          const edited = nodeAt(again, path);
          if (what === 'set') expect(edited.getProperty('note')).toEqual(value);
          else expect(edited.hasProperty('who')).toBe(false);
        }
        expect(applyEdit(after.files, after.inverse).files).toEqual(files);
      }),
      { numRuns: 3000, seed: 11 },
    );
  });

  test('comments and layout around an edit stay', () => {
    const text = 'task t { // work\n    stint s   who=EV1   /* lead */ at=bay { minutes 10 } // ok\n}\n';
    const file = parsed(text);
    const { files } = applyEdit([{ name: 'c.kdl', text }], setProperty(file, [0, 0], 'at', 'porch'));
    expect(files[0]?.text).toBe(text.replace('at=bay', 'at=porch'));
  });

  test('a stint of the campaign is found in the text, changed there, and read back', () => {
    const text = readFileSync('examples/first-campaign.kdl', 'utf8');
    const before = readCampaign([{ name: 'c.kdl', text }], standardLibrary);
    const stint = before.campaign?.tasks.find((task) => task.id === 'fetch-camera')?.stints[0];
    const file = before.document.files[0];
    if (stint === undefined || file === undefined) throw new Error('the example does not read');
    const path = pathOfSpan(file, stint.span);
    expect(path).not.toBeNull();
    const { files } = applyEdit([{ name: 'c.kdl', text }], setProperty(file, path ?? [], 'who', 'both'));
    const after = readCampaign(files, standardLibrary).campaign;
    const roles = after?.tasks.find((task) => task.id === 'fetch-camera')?.stints[0]?.roles;
    expect(roles?.map((role) => role.candidates)).toEqual([['EV1'], ['EV2']]);
    expect(pathOfSpan(file, { ...stint.span, column: stint.span.column + 1 })).toBeNull();
  });

  test('an edit made for another text is refused', () => {
    const edit = setProperty(parsed('task t rank=1'), [0], 'rank', 2);
    expect(() => applyEdit([{ name: 'c.kdl', text: 'task s' }], edit)).toThrow(/does not fit its text/);
  });

  test('a pin that is added is read, and removing it restores the text', () => {
    const text = readFileSync('examples/first-campaign.kdl', 'utf8');
    const read = (written: string) => readCampaign([{ name: 'c.kdl', text: written }], standardLibrary);
    const before = read(text);
    const file = before.document.files[0];
    if (file === undefined || before.campaign === null) throw new Error('the example does not read');
    const edit = addPin(file, { kind: 'person', stint: 'wipe-window/wipe', role: 'lead', person: 'EV2' });
    const added = applyEdit([{ name: 'c.kdl', text }], edit).files[0]?.text ?? '';
    const after = read(added);
    expect(after.campaign?.pins.map((pin) => pin.kind)).toEqual(['start', 'person']);
    const pin = after.campaign?.pins[1];
    const afterFile = after.document.files[0];
    if (pin === undefined || afterFile === undefined) throw new Error('the pin is not there');
    const removal = removePin(afterFile, pin);
    expect(removal).not.toBeNull();
    if (removal !== null) expect(applyEdit([{ name: 'c.kdl', text: added }], removal).files[0]?.text).toBe(text);
  });

  test('pins that go and pins that come, from one reading: what stays stands first, what comes in its order', () => {
    const gap = fc.constantFrom('\n', ' // why\n', '\r\n', '; ', '\n\n// next\n');
    const some = fc.record({
      pins: fc.array(fc.record({ gap, goes: fc.boolean() }), { maxLength: 6 }),
      added: fc.nat({ max: 3 }),
      tail: fc.constantFrom('', '\n', '\ntask t\n'),
    });
    fc.assert(
      fc.property(some, ({ pins, added, tail }) => {
        const line = (index: number) => `pin p${index} eva=one`;
        const text = `campaign c${pins.map((pin, index) => `${index === 0 ? '\n' : pin.gap}${line(index)}`).join('')}${tail}`;
        const file = parsed(text);
        const spans = file.nodes.filter((node) => node.name === 'pin').map((node) => node.span);
        const dropped = pins.flatMap((pin, index): Pin[] => {
          const span = spans[index];
          return pin.goes && span !== undefined ? [{ kind: 'eva', task: `p${index}`, eva: 'one', span }] : [];
        });
        const news = Array.from(
          { length: added },
          (_, index): NewPin => ({ kind: 'eva', task: `n${index}`, eva: 'two' }),
        );
        const edited = replacePins(file, dropped, news).reduce<readonly CampaignText[]>(
          (files, edit) => applyEdit(files, edit).files,
          [{ name: 'c.kdl', text }],
        );
        const after = edited[0]?.text ?? '';
        const read = parsed(after).nodes.flatMap((node) => (node.name === 'pin' ? [node.entries[0]?.value] : []));
        const kept = pins.flatMap((pin, index) => (pin.goes ? [] : [`p${index}`]));
        expect(read, after).toEqual([...kept, ...news.map((_, index) => `n${index}`)]);
        for (const comment of text.match(/^\/\/.*/gm) ?? []) expect(after).toContain(comment);
      }),
      { numRuns: 1000, seed: 5 },
    );
  });
});
