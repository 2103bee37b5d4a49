import { describe, expect, test } from 'vitest';
import { ProblemList } from '@handrail/eva/campaign/problem/problem';
import { parseFile } from '@handrail/eva/campaign/text/parse-file';
import type { CampaignJson, NodeJson } from '@handrail/wire/campaign/campaign-json';
import { upgradeText } from '@handrail/wire/campaign/upgrade-text';
import { type Migration, migrate } from '@handrail/wire/version/migrate';

const parsed = (text: string) => parseFile('c.kdl', text, new ProblemList());

/** Two steps of a format that grows: minutes become a node of their own, then tasks get their rank from their order. */
const STEPS: readonly Migration<CampaignJson>[] = [
  {
    from: 1,
    about: "a stint's minutes stand in a node of their own",
    apply: (data) =>
      mapNodes(data, (node) => {
        const { minutes, ...properties } = node.properties ?? {};
        if (node.node !== 'stint' || minutes === undefined) return node;
        return { ...node, properties, children: [...(node.children ?? []), { node: 'minutes', arguments: [minutes] }] };
      }),
  },
  {
    from: 2,
    about: 'ranks are written out',
    apply: (data) => {
      let rank = 0;
      return mapNodes(data, (node) =>
        node.node === 'task' ? { ...node, properties: { ...node.properties, rank: ++rank } } : node,
      );
    },
  },
];

function mapNodes(data: CampaignJson, change: (node: NodeJson) => NodeJson): CampaignJson {
  const walk = (node: NodeJson): NodeJson => {
    const changed = change(node);
    return changed.children === undefined ? changed : { ...changed, children: changed.children.map(walk) };
  };
  return { ...data, files: data.files.map((file) => ({ ...file, nodes: file.nodes.map(walk) })) };
}

describe('bringing data up to date', () => {
  const add = (from: number): Migration<string> => ({ from, about: `step ${from}`, apply: (data) => `${data}${from}` });

  test('takes one step a version, in order, and tells what it did', () => {
    expect(migrate('v', 1, 4, [add(3), add(1), add(2)])).toEqual({
      data: 'v123',
      done: ['step 1', 'step 2', 'step 3'],
    });
  });

  test('does nothing to what is up to date', () => {
    expect(migrate('v', 4, 4, [add(1)])).toEqual({ data: 'v', done: [] });
  });

  test.each([
    [5, 'wire/newer-version'],
    [2, 'wire/no-migration'],
  ])('refuses version %i when it knows a way from 1 and 3 to 4', (version, code) => {
    expect(() => migrate('v', version, 4, [add(1), add(3)])).toThrow(expect.objectContaining({ code }) as Error);
  });
});

describe('a campaign text of an older version', () => {
  test('is written anew with its comments, and says its new version', () => {
    const old =
      'handrail 1 // old\n// the first task\ntask a "A" { stint s who=EV1 minutes=10 }\ntask b { stint s who=EV2 }\n';
    const [file] = upgradeText([parsed(old)], 3, STEPS);
    expect(file?.text).toBe(
      [
        'handrail 3 // old',
        '// the first task',
        'task a "A" rank=1 {',
        '    stint s who=EV1 {',
        '        minutes 10',
        '    }',
        '}',
        'task b rank=2 {',
        '    stint s who=EV2',
        '}',
        '',
      ].join('\n'),
    );
    expect(file?.done).toEqual(STEPS.map((step) => step.about));
  });

  test('is not touched when it is up to date', () => {
    const text = 'handrail 3\ntask   a   {  }\n';
    expect(upgradeText([parsed(text)], 3, STEPS)).toEqual([{ name: 'c.kdl', text, done: [] }]);
  });

  test('is refused when it does not parse', () => {
    expect(() => upgradeText([parsed('handrail 1\ntask {\n')], 3, STEPS)).not.toThrow(TypeError);
    expect(() => upgradeText([parsed('handrail 1\ntask {\n')], 3, STEPS)).toThrow(/syntax error/);
  });
});
