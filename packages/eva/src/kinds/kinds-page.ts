/** The reference page of a kinds library and its task templates, as Markdown: docs/reference/kinds.md. */
import type { Kind, Verb } from './kind.ts';
import type { KindsLibrary } from './kinds-library.ts';
import type { TaskTemplate } from './templates/template.ts';

/** What the inference does with a verb; `hardware/infer-hardware.ts` is the same in code. */
const READING = [
  '- A verb that changes a value asks for one of its starting values just before the stint, and until its own step begins; it leaves its value at the end of that step. A verb that only looks asks throughout its step.',
  '- What an earlier sentence of the same stint wrote answers a later one. If it contradicts it, that is reported: no order of stints can mend it.',
  '- A piece is held from the first sentence of a stint that changes it to the last that changes it or relies on the change.',
  '- Taking a piece that others fasten (`of=`) asks for every fastener to have let go and every connector to be demated. Making a fastener or connector fast asks for the piece to be in its seat. The last fastener of a seat leaves the piece fastened or, when it lets go, seated. Fasteners that start at the same place belong to one seat.',
  '- Make before break: where a sentence may let the last fastener go, in the order of the text, the piece must be tethered, gripped, in somebody’s hands, or have `soft-capture`.',
  '- A piece that somebody takes must be in hand before it is put, stowed or seated. A piece that nobody ever takes goes straight from where it is. What is in a bag is in reach when the bag is. A socket or bay holds one piece.',
  '- `restraint=` asks for the foot restraint to be in a socket of that place for as long as it is used.',
  '- A verb under control asks for the requests of the piece and of what it belongs to; none stated is an open point. A tool is the one named, else the only one that fits, else an open point.',
  '- A written `need` replaces the inferred one on the same state and time; a written `leave` at the end comes after all others.',
].join('\n');

export function kindsPage(library: KindsLibrary, templates: readonly TaskTemplate[]): string {
  const kinds = [...library.kinds.values()].sort((a, b) => (a.id < b.id ? -1 : 1));
  const byTitle = [...templates].sort((a, b) => (a.name < b.name ? -1 : 1));
  return `${[
    '# Kinds of hardware and task templates',
    `Library \`${library.id}\`, version ${library.version}. Written by \`tools/generate-kinds-page.ts\` from the library itself: change the library, not this page.`,
    'Times are seconds for one piece by a trained crew at pace 1: low, likely, high (10th, 50th, 90th percentile). They are planning figures, common practice, no measurement: an operator replaces them with their own. "+ 2 s a turn" is added for each turn driven. **under control**: it must not be done live; the requests of the piece (`controls=`) are set and verified first. **closing**: brings the piece to a value in which it may be left for the night.',
    'A value is *always* safe to leave, until the *next EVA*, for *tonight*, or *never*; a value that is not listed is unknown.',
    '## How sentences become states',
    READING,
    '## Kinds',
    kinds.map((kind) => `[${kind.title}](#${kind.id})`).join(' · '),
    ...kinds.map(kindText),
    '## Task templates',
    'A `use` node inside a task writes these stints. An inner node named like one of its stints adds to that stint: minutes, cautions, needs, sentences.',
    ...byTitle.map(templateText),
  ].join('\n\n')}\n`;
}

function kindText(kind: Kind): string {
  const traits = [
    kind.carried ? 'carried: it has a holder' : 'not carried',
    kind.holds === 'nothing' ? null : `holds ${kind.holds.replace('-', ' ')}`,
    kind.attaches === undefined ? null : `a ${kind.attaches.as} of the piece that it names with \`of=\``,
  ].filter((trait) => trait !== null);
  return [
    `### <a id="${kind.id}"></a>${kind.title} (\`${kind.id}\`)`,
    `${kind.about} It is ${traits.join('; ')}.`,
    ...kind.aspects.map((aspect, index) => {
      const values = aspect.values.map((value) => `\`${value}\` (${safeText(aspect.safe[value])})`).join(', ');
      return `State${index === 0 ? '' : ` \`.${aspect.id}\``}, ${aspect.id}: ${values}.`;
    }),
    kind.properties.length === 0
      ? null
      : kind.properties.map((one) => `Property \`${one.id}\` (${one.type}): ${one.about}`).join('  \n'),
    verbTable(kind),
    `Source: ${kind.source}.`,
  ]
    .filter((part) => part !== null)
    .join('\n\n');
}

function verbTable(kind: Kind): string {
  const rows = kind.verbs.map((verb) => {
    const change =
      verb.leaves === null ? '' : `${verb.needs.join(' or ') || 'anything'} → ${verb.leaves}${ofAspect(kind, verb)}`;
    const also = (verb.alsoNeeds ?? []).map((one) => `; ${one.aspect} ${one.values.join(' or ')}`).join('');
    const needs = verb.leaves === null && verb.needs.length > 0 ? `only when ${verb.needs.join(' or ')}` : change;
    const carry = verb.carry === 'none' ? null : verb.carry;
    return `| \`${verb.id}\` | ${verb.sentence.replace('{object}', '…')} | ${needs}${also} | ${timeText(verb)} | ${[
      carry,
      verb.toolKinds.length === 0 ? null : `tool: ${verb.toolKinds.join(' or ')}`,
      verb.underControl ? '**under control**' : null,
      verb.closing ? 'closing' : null,
      verb.voice ? 'read step by step' : null,
      `${verb.effort} effort`,
    ]
      .filter((one) => one !== null)
      .join(', ')} |`;
  });
  return ['| verb | aloud | changes | seconds | |', '|---|---|---|---|---|', ...rows].join('\n');
}

function ofAspect(kind: Kind, verb: Verb): string {
  return verb.aspect === null || verb.aspect === kind.aspects[0]?.id ? '' : ` (${verb.aspect})`;
}

function timeText({ timeS, perTurnS }: Verb): string {
  return `${timeS.low} / ${timeS.likely} / ${timeS.high}${perTurnS === null ? '' : ` + ${perTurnS} s a turn`}`;
}

function safeText(safe: string | undefined): string {
  return safe === undefined ? 'unknown' : safe.replace('next-eva', 'next EVA');
}

function templateText(template: TaskTemplate): string {
  const args = template.arguments.map(
    (one) => `| \`${one.id}\` | ${one.type} | ${one.required ? 'needed' : ''} | ${one.about} |`,
  );
  return [
    `### ${template.title} (\`${template.name}\`)`,
    template.about,
    ['| argument | | | |', '|---|---|---|---|', ...args].join('\n'),
    `\`\`\`kdl\n${template.example.use}\n\`\`\``,
    'stands for',
    `\`\`\`kdl\n${template.example.expands}\n\`\`\``,
  ].join('\n\n');
}
