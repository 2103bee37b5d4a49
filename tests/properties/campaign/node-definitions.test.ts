import { readdirSync, readFileSync } from 'node:fs';
import { describe, expect, test } from 'vitest';
import { checkShapes } from '@handrail/eva/campaign/check/check-shape';
import { nodes } from '@handrail/eva/campaign/nodes.generated';
import { ProblemList } from '@handrail/eva/campaign/problem/problem';
import { parseFile } from '@handrail/eva/campaign/text/parse-file';
import { standardLibrary } from '@handrail/eva/kinds/kinds-library';

const CODES_IN_PLACE = (text: string, parent: string): readonly string[] => {
  const problems = new ProblemList();
  const { nodes: parsed } = parseFile('example.kdl', text, problems);
  checkShapes(
    parsed,
    parent,
    nodes.find((one) => one.name === parent)?.steps ?? false,
    standardLibrary.verbs,
    problems,
  );
  return problems.sorted(['example.kdl']).map((problem) => `${problem.code}: ${problem.what}`);
};

describe.each(nodes.map((node) => [node.name, node] as const))('node %s', (_, node) => {
  test('stands in a file of its own name and names parents that exist', () => {
    const file = readFileSync(`packages/eva/src/campaign/nodes/${node.name}.ts`, 'utf8');
    expect(file).toMatch(new RegExp(`^export const \\w+ = defineNode\\(\\{\n  name: '${node.name}',`, 'm'));
    for (const parent of node.parents) expect([...nodes.map((one) => one.name), 'document']).toContain(parent);
  });

  test('has valid examples in which nothing is wrong', () => {
    expect(node.examples.valid.length).toBeGreaterThan(0);
    for (const text of node.examples.valid) {
      for (const parent of node.parents) expect([text, CODES_IN_PLACE(text, parent)]).toEqual([text, []]);
    }
  });

  test('has invalid examples that give the named problem and no other', () => {
    expect(node.examples.invalid.length).toBeGreaterThan(0);
    for (const { text, code } of node.examples.invalid) {
      const codes = CODES_IN_PLACE(text, node.parents[0] as string).map((line) => line.split(':')[0]);
      expect([text, codes]).toEqual([text, [code]]);
    }
  });
});

describe('the registry', () => {
  test('no node definition is left out of the registry', () => {
    const files = readdirSync('packages/eva/src/campaign/nodes');
    expect(nodes.map((node) => `${node.name}.ts`).sort()).toEqual(files.sort());
  });
});
