/** `handrail wayhome FILE [TIMELINE]`: the way home over an EVA, or from one minute of it. Without a timeline it is planned first. */
import type { EvaTimeline } from '@handrail/eva/timeline/timeline';
import type { WayHome } from '@handrail/eva/wayhome/way-home-plan';
import { leastMargin } from '@handrail/eva/wayhome/least-margin';
import type { LastMoment, Latest } from '@handrail/eva/wayhome/last-moments';
import { type ArmIs, type Mode, MODES } from '@handrail/eva/wayhome/way-home-state';
import { type WayHomeSurface, wayHomeSurface } from '@handrail/eva/wayhome/way-home-surface';
import { wayHomeInNineOfTen } from '@handrail/eva/wayhome/way-home';
import { isWhole } from '@handrail/eva/wayhome/worst-over-pairs';
import { formatDuration, formatPet } from '@handrail/quantity/time';
import type { Command } from 'commander';
import { boundWords } from '../bound-words.ts';
import { evaNamed } from '../eva-named.ts';
import { EXIT, type ExitCode } from '../exit-code.ts';
import { ExitError } from '../exit-error.ts';
import { type LoadedCampaign, loadCampaign } from '../load-campaign.ts';
import { petNamed } from '../pet-named.ts';
import { givenOrPlanned } from '../plan/given-or-planned.ts';
import { plainTable } from '../terminal/plain-table.ts';
import { wayhome } from '@handrail/wire/answers/wayhome';
import { print } from '../terminal/output.ts';
import { printAnswer } from '../terminal/print-answer.ts';
import { evaShown, wayShown } from '../way-home-answer.ts';

interface WayHomeOptions {
  readonly eva?: string;
  readonly at?: string;
  readonly mode?: string;
  readonly armDead?: boolean;
  readonly json?: boolean;
}

export function register(program: Command): void {
  program
    .command('wayhome')
    .description('the way home: how long until both are in from every minute, margins, stretches without a safe stop')
    .argument('<file>', 'campaign file')
    .argument('[timeline]', 'timeline of it; without one it is planned')
    .option('--eva <eva>', 'only this EVA')
    .option('--at <pet>', 'from this minute: the whole plan, step by step')
    .option('--mode <mode>', `only this mode: ${MODES.join(', ')}`)
    .option('--arm-dead', 'with --at: the arm does not move')
    .option('--json', 'the same as JSON')
    .action(async (file: string, timelineFile: string | undefined, options: WayHomeOptions) => {
      const loaded = loadCampaign(file);
      const { campaign, hardware, library } = loaded;
      const modes = modesNamed(options.mode);
      const timeline = await givenOrPlanned(loaded, timelineFile);
      const evas = options.eva === undefined ? timeline.evas : [evaNamed(timeline, options.eva)];
      const surfaceOf = (eva: EvaTimeline): WayHomeSurface =>
        wayHomeSurface(campaign, hardware, library, timeline, eva);
      if (options.at !== undefined) {
        const [eva, ...others] = evas;
        if (eva === undefined || others.length > 0) {
          throw new ExitError(
            EXIT.badInput,
            `--at needs one EVA: --eva ${timeline.evas.map((one) => one.eva).join(' or ')}`,
          );
        }
        const arm = options.armDead === true ? 'dead' : 'alive';
        fromOneMinute(loaded, surfaceOf(eva), petNamed(options.at, eva), modes, arm, options.json === true);
        return;
      }
      const surfaces = evas.map(surfaceOf);
      const [code, why] = verdictOf(surfaces, modes);
      if (options.json === true) {
        printAnswer(wayhome, code, {
          campaign: campaign.id,
          documentHash: campaign.documentHash,
          quantile: 0.9,
          at: null,
          evas: surfaces.map((surface) => evaShown(surface, modes)),
        });
      } else for (const surface of surfaces) printSurface(surface, modes);
      if (code !== EXIT.fine) throw new ExitError(code, why);
    });
}

function verdictOf(surfaces: readonly WayHomeSurface[], modes: readonly Mode[]): readonly [ExitCode, string] {
  const samples = surfaces.flatMap((surface) => surface.samples);
  if (surfaces.some((surface) => surface.limit === null)) {
    return [
      EXIT.cannotTell,
      'no limit is stated (longest= of the EVA, suit-limit of a person): margins cannot be told',
    ];
  }
  if (samples.some((sample) => modes.some((mode) => (sample.marginAtMostS[mode] ?? 0) < 0))) {
    return [EXIT.findings, 'from some minute the way home does not fit before the limit'];
  }
  if (samples.some((sample) => modes.some((mode) => sample.worst[mode].unknown.length > 0))) {
    return [EXIT.cannotTell, 'somewhere the way home is unknown'];
  }
  return [EXIT.fine, ''];
}

function modesNamed(word: string | undefined): readonly Mode[] {
  if (word === undefined) return MODES;
  const mode = MODES.find((candidate) => candidate === word);
  if (mode === undefined)
    throw new ExitError(EXIT.badInput, `no mode is called "${word}"; there are ${MODES.join(', ')}`);
  return [mode];
}

function fromOneMinute(
  loaded: LoadedCampaign,
  surface: WayHomeSurface,
  petS: number,
  modes: readonly Mode[],
  arm: ArmIs,
  json: boolean,
): void {
  const { progress, ground, limit, eva } = surface;
  const now = progress.at(petS);
  const finished = now.map((segment) => segment.index);
  const ways = modes.map((mode) => {
    const { values } = progress.state(now, finished, petS, arm, 'high');
    return wayHomeInNineOfTen(
      ground,
      (basis) => progress.state(now, finished, petS, arm, basis),
      { mode, arm },
      (person) => progress.travelOf(person, values),
      surface.horizon,
    );
  });
  const margin = (way: WayHome): number | null =>
    limit === null || way.totalS === null ? null : limit.petS - petS - way.totalS;
  const isLate = ways.some((way) => (margin(way) ?? 0) < 0);
  const isUnknown = limit === null || ways.some((way) => way.unknown.length > 0);
  const code = isLate ? EXIT.findings : isUnknown ? EXIT.cannotTell : EXIT.fine;
  if (json) {
    printAnswer(wayhome, code, {
      campaign: loaded.campaign.id,
      documentHash: loaded.campaign.documentHash,
      quantile: 0.9,
      at: { eva, petS, limit, ways: ways.map((way) => wayShown(way, margin(way))) },
      evas: [],
    });
  } else for (const way of ways) printWay(surface, petS, way, margin(way));
  if (isLate) throw new ExitError(code, 'the way home does not fit before the limit');
  if (isUnknown) throw new ExitError(code, limit === null ? 'no limit is stated' : 'the way home is unknown here');
}

function printWay(surface: WayHomeSurface, petS: number, way: WayHome, marginS: number | null): void {
  const certain = way.totalS === null ? '' : way.shortest ? ', shortest' : ', an upper bound';
  print(`\n${surface.eva}, PET ${formatPet(petS)}: ${way.mode}${way.arm === 'dead' ? ', arm dead' : ''}`);
  print(way.totalS === null ? `  no way home: ${way.words}` : `  ${way.words}  (90 %${certain})`);
  if (marginS !== null && surface.limit !== null) {
    print(
      `  ${marginS < 0 ? 'short by' : 'margin'} ${formatDuration(Math.abs(marginS))} to PET ${formatPet(surface.limit.petS)}, ${surface.limit.cause}`,
    );
  }
  const steps = way.people
    .flatMap((person) => person.steps.map((step) => ({ person: person.person, step })))
    .sort((a, b) => a.step.startS - b.step.startS || (a.person < b.person ? -1 : 1));
  if (steps.length > 0) {
    const table = plainTable(['PET', 'until', 'who', 'what']);
    for (const { person, step } of steps) {
      table.push([formatPet(petS + step.startS), formatPet(petS + step.endS), person, step.words]);
    }
    if (way.totalS !== null)
      table.push([formatPet(petS + way.totalS - way.closeHatchS), formatPet(petS + way.totalS), '', 'close the hatch']);
    print(table.toString());
  }
  for (const assumption of way.assumptions) print(`  rests on: ${assumption}`);
}

function printSurface(surface: WayHomeSurface, modes: readonly Mode[]): void {
  const limit =
    surface.limit === null
      ? 'no limit is stated'
      : `both in by PET ${formatPet(surface.limit.petS)}, ${surface.limit.cause}`;
  print(
    `\n${surface.eva}: ${limit}; ${surface.pairs.length} pairs of progress that can stand side by side; 90 % times`,
  );
  const table = plainTable(['mode', 'longest way home', 'at PET', 'least margin', 'at PET', 'no safe stop, unknown']);
  for (const mode of modes) {
    const known = surface.samples.filter((sample) => sample.worst[mode].totalS !== null);
    const longest = [...known].sort((a, b) => (b.worst[mode].totalS ?? 0) - (a.worst[mode].totalS ?? 0))[0];
    const least = leastMargin(surface, mode);
    const seconds = (which: 'unknown' | 'blocked'): number =>
      surface.samples
        .filter((sample) => sample.worst[mode][which].length > 0)
        .reduce((sum, sample) => sum + sample.endS - sample.petS, 0);
    table.push([
      mode,
      longest?.worst[mode].way?.words ?? 'unknown',
      longest === undefined ? '' : formatPet(longest.petS),
      least === null
        ? 'cannot be told'
        : `${boundWords(least.marginS, least.isWhole)}${formatDuration(Math.abs(least.marginS))}`,
      least === null ? '' : formatPet(least.sample.endS),
      `${formatDuration(seconds('blocked'))}, ${formatDuration(seconds('unknown'))}`,
    ]);
  }
  print(table.toString());
  const returns = surface.samples.filter((sample) => sample.returnMarginAtMostS !== null);
  const nearest = [...returns].sort((a, b) => (a.returnMarginAtMostS ?? 0) - (b.returnMarginAtMostS ?? 0))[0];
  if (nearest !== undefined) {
    const leftS = nearest.returnMarginAtMostS ?? 0;
    const bound = boundWords(
      leftS,
      surface.samples.every(({ worst }) => isWhole(worst.abort)),
    );
    print(
      `Return limit: the least margin to the hatch in abort is ${bound}${formatDuration(Math.abs(leftS))}, PET ${formatPet(nearest.petS)}`,
    );
  }
  if (surface.committed.length > 0) {
    print('\nNo safe stop in reach');
    const list = plainTable(['who', 'from PET', 'to PET', 'begins in', 'why']);
    for (const one of surface.committed) {
      const why = `${one.why.join('; ')}${one.ifArmStops ? ' (if the arm stops)' : ''}`;
      list.push([one.person, formatPet(one.startS), formatPet(one.endS), one.entry ?? 'on the way', why]);
    }
    print(list.toString());
  }
  printLastMoments(surface.lastMoments);
}

/** Why a moment cannot be told is said once, below. */
function printLastMoments(moments: readonly LastMoment[]): void {
  print('\nLast moment to start, and still all can be closed (terminate) or left as it is (abort)');
  const whys = [...new Set(moments.flatMap(({ terminate, abort }) => [terminate.why, abort.why]))].filter(
    (why) => why !== null,
  );
  const words = ({ latestS, atMostS, why }: Latest): string => {
    if (latestS !== null) return formatPet(Math.floor(latestS));
    const note = `(${whys.indexOf(why ?? '') + 1})`;
    return atMostS === null ? `cannot be told ${note}` : `at most ${formatPet(Math.floor(atMostS))} ${note}`;
  };
  const table = plainTable(['stint', 'planned', 'terminate', 'abort']);
  for (const one of moments) {
    table.push([one.stint, formatPet(one.plannedS), words(one.terminate), words(one.abort)]);
  }
  print(table.toString());
  for (const [at, why] of whys.entries()) print(`(${at + 1}) cannot be told from some pair of progress: ${why}`);
}
