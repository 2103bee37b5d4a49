/** `handrail show`: what the campaign says, and with --states what was read into its sentences. */
import type { Campaign, Hardware, Stint } from '@handrail/eva/campaign/campaign';
import { type DescribedStint, describeStates, stateSentences } from '@handrail/eva/hardware/describe-states';
import type { Kind, Verb } from '@handrail/eva/kinds/kind';
import type { KindsLibrary } from '@handrail/eva/kinds/kinds-library';
import { formatDuration } from '@handrail/quantity/time';
import { show } from '@handrail/wire/answers/show';
import type { Command } from 'commander';
import { EXIT } from '../exit-code.ts';
import { ExitError } from '../exit-error.ts';
import { loadCampaign } from '../load-campaign.ts';
import { showAnswer } from '../show-answer.ts';
import { print } from '../terminal/output.ts';
import { printAnswer } from '../terminal/print-answer.ts';
import { tableText } from '../terminal/table-text.ts';
import { textWidth, wrapText } from '../terminal/wrap-text.ts';

interface ShowOptions {
  readonly states?: boolean;
  readonly kind?: string;
  readonly json?: boolean;
}

export function register(program: Command): void {
  program
    .command('show')
    .description('show the stints and hardware of a campaign, or the states inferred from its sentences')
    .argument('<files...>', 'campaign text')
    .option('--states', 'what each step needs and leaves, for a yes or no')
    .option('--kind <kind>', 'only this kind of hardware: its pieces, its verbs, the stints that touch it')
    .option('--json', 'the same as JSON')
    .action((files: string[], options: ShowOptions) => {
      const { campaign, hardware, library } = loadCampaign(...files);
      const kind = options.kind === undefined ? null : kindNamed(options.kind, library);
      const pieces = campaign.hardware.filter((piece) => kind === null || piece.kind === kind.id);
      const stints = campaign.tasks
        .flatMap((task) => task.stints)
        .filter((stint) => kind === null || touches(stint, pieces));
      const keys = new Set(stints.map((stint) => stint.key));
      const states =
        options.states === true ? describeStates(campaign, hardware).filter((one) => keys.has(one.stint)) : null;
      if (options.json === true) {
        printAnswer(show, EXIT.fine, showAnswer(campaign, kind, stints, pieces, states));
        return;
      }
      print(`${campaign.title} (${campaign.id}), kinds library ${campaign.library.id} ${campaign.library.version}`);
      if (kind !== null) print(`\n${kind.title}. ${kind.about}\n${verbTable(kind)}`);
      if (states === null) print(`\n${stintTable(stints)}`);
      if (states === null || kind !== null) print(`\n${hardwareTable(campaign, pieces)}`);
      if (states !== null) print(`\n${statesText(states)}`);
    });
}

/** @throws ExitError with code 2 when the library has no such kind */
function kindNamed(id: string, library: KindsLibrary): Kind {
  const kind = library.kinds.get(id);
  if (kind === undefined) {
    throw new ExitError(
      EXIT.badInput,
      `the library has no kind "${id}"; it has ${[...library.kinds.keys()].join(', ')}`,
    );
  }
  return kind;
}

function touches(stint: Stint, pieces: readonly Hardware[]): boolean {
  const ids = new Set(pieces.map((piece) => piece.id));
  return stint.steps.some((step) => step.objects.some((object) => ids.has(object)));
}

function stintTable(stints: readonly Stint[]): string {
  return tableText(
    ['stint', 'title', 'who', 'at', 'agreed', 'from', 'steps'],
    stints.map((stint) => [
      stint.key,
      stint.title,
      stint.roles.map((role) => role.candidates.join(' or ')).join(' + '),
      [...new Set(stint.roles.flatMap((role) => [role.at, role.to]))].join(' → '),
      formatDuration(stint.duration.agreedS),
      stint.duration.basis,
      String(stint.steps.length),
    ]),
  );
}

function hardwareTable(campaign: Campaign, pieces: readonly Hardware[]): string {
  if (pieces.length === 0) return `no hardware${campaign.hardware.length === 0 ? ' is named' : ' of this kind'}`;
  return tableText(
    ['hardware', 'kind', 'at', 'of', 'state at the start', 'controls'],
    pieces.map((piece) => {
      const states = Object.entries(piece.initial).map(([aspect, value]) => `${aspect} ${value}`);
      const state = states.length === 0 ? 'not stated' : states.join(', ');
      return [piece.id, piece.kind, piece.at.id, piece.of ?? '', state, piece.controls.join(' ')];
    }),
  );
}

function verbTable(kind: Kind): string {
  return tableText(
    ['verb', 'of its', 'needs', 'leaves', 'low / likely / high', 'tool', 'under control'],
    kind.verbs.map((verb) => [
      verb.id,
      verb.aspect ?? '',
      verb.needs.join(' or ') || 'anything',
      verb.leaves ?? '',
      timeText(verb),
      verb.toolKinds.join(' or '),
      verb.underControl ? 'yes' : '',
    ]),
  );
}

function timeText(verb: Verb): string {
  const { low, likely, high } = verb.timeS;
  const turns = verb.perTurnS === null ? '' : ` + ${verb.perTurnS} s a turn`;
  return `${low} / ${likely} / ${high} s${turns}`;
}

function statesText(states: readonly DescribedStint[]): string {
  const unknowns = states.flatMap((one) => one.lines.filter((line) => line.kind === 'unknown')).length;
  const last = unknowns === 0 ? 'nothing is left open' : `${unknowns} left open: search for "cannot tell"`;
  const stints = states.map(
    (one) =>
      `${one.stint} "${one.title}"\n${stateSentences(one)
        .flatMap((line) => line.replaceAll('; cannot tell', ';\n    cannot tell').split('\n'))
        .map((line) => (line.startsWith(' ') ? wrapText(line, textWidth(), 6) : `  ${wrapText(line, textWidth(), 4)}`))
        .join('\n')}`,
  );
  return `${stints.join('\n\n')}\n\n${last}`;
}
