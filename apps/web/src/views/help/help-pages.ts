/** Pages of help, from the same objects that make the messages and the reference: what is said here cannot be out of date. */
import { describeType } from '@handrail/eva/campaign/check/describe-type';
import { nodes } from '@handrail/eva/campaign/nodes.generated';
import { EXPLANATIONS } from '@handrail/eva/judge/explanations';
import { standardLibrary } from '@handrail/eva/kinds/kinds-library';
import { formatDuration } from '@handrail/quantity/time';

export interface HelpPage {
  readonly id: string;
  readonly sort: 'Checks' | 'Nodes of the text' | 'Kinds of hardware';
  readonly title: string;
  readonly about: string;
  /** Name, what it is. */
  readonly parts: readonly (readonly [string, string])[];
  readonly examples: readonly { readonly title: string; readonly text: string }[];
  readonly source: string | null;
}

export const SORTS = ['Checks', 'Nodes of the text', 'Kinds of hardware'] as const;

export const HELP_PAGES: readonly HelpPage[] = [
  ...EXPLANATIONS.map(({ id, title, why, severity, source, examples }): HelpPage => {
    const texts =
      examples === null
        ? []
        : ([
            ['This breaks it', examples.violates],
            ['This keeps it', examples.satisfies],
          ] as const);
    return {
      id,
      sort: 'Checks',
      title,
      about: why,
      parts: [['weight', severity]],
      source,
      examples: texts.map(([head, { campaign, timeline }]) => ({
        title: head,
        text: `${campaign.trim()}\n\n${timeline.trim()}`,
      })),
    };
  }),
  ...nodes.map(
    (node): HelpPage => ({
      id: `node ${node.name}`,
      sort: 'Nodes of the text',
      title: `${node.name} (${node.parents.map((parent) => (parent === 'document' ? 'at the top' : `in ${parent}`)).join(', ')})`,
      about: node.about,
      parts: [
        ...node.arguments.map(({ name, type, about }) => [name, `${about} ${describeType(type)}`] as const),
        ...Object.entries(node.properties).map(
          ([name, { type, about, required }]) =>
            [`${name}=`, `${about} ${describeType(type)}${required ? ', needed' : ''}`] as const,
        ),
      ],
      source: null,
      examples: [{ title: 'For example', text: node.examples.valid.join('\n') }],
    }),
  ),
  ...[...standardLibrary.kinds.values()].map(
    (kind): HelpPage => ({
      id: `kind ${kind.id}`,
      sort: 'Kinds of hardware',
      title: kind.title,
      about: kind.about,
      parts: [
        ...kind.aspects.map(({ id, values }) => [id, values.join(', ')] as const),
        ...kind.verbs.map(
          ({ id, timeS, leaves }) =>
            [
              `verb ${id}`,
              `${formatDuration(timeS.likely)} (${formatDuration(timeS.low)} to ${formatDuration(timeS.high)})${leaves === null ? '' : `, leaves it ${leaves}`}`,
            ] as const,
        ),
      ],
      source: kind.source,
      examples: [],
    }),
  ),
];
