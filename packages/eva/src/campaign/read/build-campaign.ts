/** Checked nodes to the campaign. What it cannot resolve it reports; the result counts only when nothing was reported. */
import type { KindsLibrary } from '../../kinds/kinds-library.ts';
import type { Campaign, DefaultUsed } from '../campaign.ts';
import { type CheckedNode, child, text, textAt, wordsFrom } from '../check/checked-node.ts';
import { nearestName } from '../problem/nearest-name.ts';
import type { ProblemList } from '../problem/problem.ts';
import type { Span } from '../span.ts';
import type { Declarations } from './declarations.ts';
import { filledIn, type ReadContext, titleOf } from './read-context.ts';
import { assumedPeople, readArm, readPerson } from './read-crew.ts';
import { readGate, readPin, readResponse, readWaiver } from './read-decisions.ts';
import { readCutOrder, readEva, readObjective, readRanks } from './read-excursion.ts';
import { readHardware, reportCircles } from './read-hardware.ts';
import { readClock, readEvent, readLimits, readRequest, readWindow } from './read-outside-world.ts';
import { readPrebreathe } from './read-prebreathe.ts';
import { readSuit } from './read-suit.ts';
import { readSky, reportUncomputable } from './read-sky.ts';
import { readTask } from './read-task.ts';
import { readSurfaceTemperatures, readTouchLimits } from './read-touch.ts';
import { readUnitTemperature } from './read-unit-temperature.ts';
import { reportOrderCircles } from './report-order-circles.ts';
import { placelessVehicle, readVehicle, reportUnreached } from './read-vehicle.ts';

export function buildCampaign(
  nodes: readonly CheckedNode[],
  ids: Declarations,
  library: KindsLibrary,
  rules: readonly string[],
  fileName: string,
  problems: ProblemList,
): Omit<Campaign, 'documentHash'> {
  const named = (...names: string[]): readonly CheckedNode[] => nodes.filter((node) => names.includes(node.name));
  const top = named('campaign')[0];
  const vehicleNode = named('vehicle')[0];
  const start: Span = { file: fileName, line: 1, column: 1, length: 0 };
  const span = top?.span ?? start;
  const defaults: DefaultUsed[] = [];
  const peopleNodes = named('person');
  const bodies = [...ids.ids('person'), ...ids.ids('arm')];
  const context: ReadContext = {
    library,
    ids,
    problems,
    defaults,
    outside:
      peopleNodes.length === 0
        ? ['EV1', 'EV2']
        : peopleNodes.flatMap((node) => (text(node, 'role') === 'outside' ? (textAt(node, 0) ?? []) : [])),
    bodyOrder: new Map(bodies.map((id, at) => [id, at])),
    placeless: vehicleNode === undefined,
  };
  if (top === undefined) {
    problems.add('missing-node', start, 'no "campaign" node names this campaign', {
      expected: 'campaign <id> "Title"',
    });
  }
  checkLibrary(named('library')[0], library, span, context);

  const people =
    peopleNodes.length === 0 ? assumedPeople(span, context) : peopleNodes.map((node) => readPerson(node, context));
  const arms = named('arm').map((node) => readArm(node, context));
  const vehicle = vehicleNode === undefined ? placelessVehicle(span, context) : readVehicle(vehicleNode, context);
  const hardware = named('hardware').flatMap((node) => readHardware(node, context));
  reportCircles(hardware, context);
  const evas = named('eva').map((node) => readEva(node, people, context));
  if (evas.length === 0) {
    problems.add('missing-node', span, 'no "eva" says when anybody goes out', {
      expected: 'eva <id> egress="2031-09-14T11:40:00Z"',
    });
  }

  const taskNodes = named('task', 'insert');
  const objectiveNodes = named('objective');
  const served = objectivesOfTasks(taskNodes, objectiveNodes);
  const taskRanks = readRanks(taskNodes, 'task', context);
  const byId = new Map(hardware.map((piece) => [piece.id, piece]));
  const evaIds = evas.map((eva) => eva.id);
  const tasks = taskNodes
    .map((node) =>
      readTask(
        node,
        taskRanks.get(node) ?? 0,
        text(node, 'objective') ?? served.listed.get(textAt(node, 0) ?? '') ?? null,
        evaIds,
        { arms, hardware: byId },
        context,
      ),
    )
    .sort((a, b) => a.rank - b.rank);
  reportOrderCircles(tasks, context);
  const objectiveRanks = readRanks(objectiveNodes, 'objective', context);
  const used = new Map<string, Span>();
  for (const task of tasks) {
    for (const stint of task.stints) {
      for (const role of stint.roles) {
        if (role.name === 'arm') continue;
        for (const place of [role.at, role.to]) if (!used.has(place)) used.set(place, role.span);
      }
    }
  }
  if (vehicleNode !== undefined) reportUnreached(vehicle, arms, used, context);

  const sky = readSky(nodes, vehicle, context);
  const windows = named('window').map((node) => readWindow(node, context));
  reportUncomputable(nodes, windows, sky, vehicle, context);

  return {
    formatVersion: 1,
    id: (top === undefined ? null : textAt(top, 0)) ?? '',
    title: top?.title ?? titleOf((top === undefined ? null : textAt(top, 0)) ?? ''),
    span,
    people,
    arms,
    evas,
    objectives: objectiveNodes
      .map((node) => readObjective(node, objectiveRanks.get(node) ?? 0, served.said, context))
      .sort((a, b) => a.rank - b.rank),
    tasks,
    hardware,
    vehicle,
    limits: readLimits(named('limits')[0] ?? null),
    requests: named('request').map((node) => readRequest(node, context)),
    events: named('event').map((node) => readEvent(node, context)),
    clocks: named('clock').map((node) => readClock(node, context)),
    windows,
    sky,
    gates: named('gate').map(readGate),
    responses: named('response').map((node) => readResponse(node, byId, context)),
    cutOrders: named('cut-order').map(readCutOrder),
    pins: named('pin').flatMap((node) => readPin(node, context) ?? []),
    waivers: named('waive').map((node) => readWaiver(node, rules, context)),
    suits: named('suit').flatMap((node) => readSuit(node, context) ?? []),
    prebreathes: named('prebreathe').flatMap((node) => readPrebreathe(node, context) ?? []),
    unitTemperatures: named('unit-temperature').flatMap((node) => readUnitTemperature(node, context) ?? []),
    touchLimits: readTouchLimits(named('touch-limit'), context),
    surfaceTemperatures: readSurfaceTemperatures(named('surface-temperature'), context),
    library: { id: library.id, version: library.version },
    defaults,
  };
}

/** The campaign is pinned to a library; another one would change verbs and times under it. */
function checkLibrary(node: CheckedNode | undefined, library: KindsLibrary, span: Span, context: ReadContext): void {
  if (node === undefined) {
    filledIn(context, null, span, 'kinds library', `${library.id} version ${library.version}`, 'format');
    return;
  }
  const id = textAt(node, 0);
  const version = text(node, 'version');
  if (id !== null && id !== library.id) {
    context.problems.add('unknown-library', node.arguments[0]?.span ?? node.span, `the library "${id}" is not here`, {
      expected: library.id,
      nearest: nearestName(id, [library.id]),
    });
  } else if (version !== null && version !== library.version) {
    context.problems.add(
      'unknown-library',
      node.properties.get('version')?.span ?? node.span,
      `version ${version} of the library is not here`,
      {
        expected: `version="${library.version}"`,
      },
    );
  }
}

function objectivesOfTasks(
  taskNodes: readonly CheckedNode[],
  objectiveNodes: readonly CheckedNode[],
): {
  readonly said: ReadonlyMap<string, { readonly objective: string; readonly span: Span }>;
  readonly listed: ReadonlyMap<string, string>;
} {
  const said = new Map<string, { objective: string; span: Span }>();
  for (const node of taskNodes) {
    const objective = text(node, 'objective');
    const id = textAt(node, 0);
    if (objective !== null && id !== null) said.set(id, { objective, span: node.span });
  }
  const listed = new Map<string, string>();
  for (const node of objectiveNodes) {
    const tasks = child(node, 'tasks');
    for (const word of tasks === null ? [] : wordsFrom(tasks, 0)) {
      const id = textAt(node, 0);
      if (id !== null && !listed.has(word.text)) listed.set(word.text, id);
    }
  }
  return { said, listed };
}
