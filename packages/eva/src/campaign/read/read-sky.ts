/** The sky as the campaign states it; and whether what is stated suffices for the windows that are to be computed. */
import { Fault } from '@handrail/quantity/fault';
import type { AttitudeLaw, AttitudeRow } from '../../sky/attitude.ts';
import type { FieldRegion } from '../../sky/field-region.ts';
import type { Antenna, RadioPartner } from '../../sky/radio-contact.ts';
import { normalized, quaternionOfYawPitchRoll } from '../../sky/rotation.ts';
import type { Worksite } from '../../sky/worksite.ts';
import type { Vehicle, WindowSet } from '../campaign.ts';
import type { CampaignSky, StatedSightLine } from '../campaign-sky.ts';
import { type CheckedNode, child, childrenOf, number, spanOf, text, textAt } from '../check/checked-node.ts';
import type { Span } from '../span.ts';
import { filledIn, type ReadContext } from './read-context.ts';
import { readDirection } from './read-direction.ts';
import { readOrbitNode } from './read-orbit-node.ts';
import { readVehicleShape } from './read-vehicle-shape.ts';

/** A surface nearer than this casts no shadow on a worksite and hides no antenna: the one it stands on, m. */
const OWN_SURFACE_M = 0.5;

export function readSky(nodes: readonly CheckedNode[], vehicle: Vehicle, context: ReadContext): CampaignSky {
  const named = (...names: string[]): readonly CheckedNode[] => nodes.filter((node) => names.includes(node.name));
  const orbitNode = named('orbit')[0];
  const fieldNode = named('field-region')[0];
  const linksNode = named('links')[0];
  const attitudeNode = named('attitude')[0];
  const placeNodes = new Map(
    named('vehicle')
      .flatMap((node) => childrenOf(node, 'place'))
      .map((node) => [textAt(node, 0) ?? '', node] as const),
  );
  const [firstPartner] = named('relay', 'ground-station');
  if (linksNode === undefined && firstPartner !== undefined) {
    const words = 'no time lost between links, none too short to take up';
    filledIn(context, null, firstPartner.span, 'how one radio link follows another', words, 'format');
  }
  const { bodies, joints } = readVehicleShape(named('body'), context);
  const jointNames = new Set(joints.map((joint) => joint.name));
  return {
    orbit: orbitNode === undefined ? null : readOrbitNode(orbitNode, context),
    attitude: attitudeNode === undefined ? null : readAttitude(attitudeNode, context),
    bodies,
    joints,
    partners: named('relay', 'ground-station').map((node) => readPartner(node, context)),
    antennas: named('antenna').flatMap((node) => readAntenna(node, vehicle, jointNames, context)),
    links:
      linksNode === undefined
        ? null
        : { handoverS: number(linksNode, 'handover') ?? 0, shortestLinkS: number(linksNode, 'shortest') ?? 0 },
    fieldRegion: fieldNode === undefined ? null : readFieldRegion(fieldNode, context),
    fieldExposureS: fieldNode === undefined ? null : number(fieldNode, 'exposure'),
    worksites: vehicle.places.flatMap((place): Worksite[] => {
      if (place.positionM === null) return [];
      const facing = placeNodes.get(place.id);
      const node = facing === undefined ? null : child(facing, 'facing');
      return [
        {
          name: place.id,
          positionM: place.positionM,
          normal: node === null ? null : readDirection(node, context),
          joint: null,
          clearanceM: OWN_SURFACE_M,
        },
      ];
    }),
    sightLines: [...placeNodes].flatMap(([place, node]): StatedSightLine[] => {
      const sight = child(node, 'line-of-sight');
      const direction = sight === null ? null : readDirection(sight, context);
      if (sight === null || direction === null) return [];
      return [{ place, direction, withinRad: number(sight, 'within') ?? 0, span: sight.span }];
    }),
  };
}

function readPartner(node: CheckedNode, context: ReadContext): RadioPartner {
  const name = textAt(node, 0) ?? '';
  const longitudeRad = number(node, 'longitude') ?? 0;
  if (node.name === 'relay') {
    const grazingM =
      number(node, 'grazing') ??
      filledIn(context, 0, node.span, `grazing height of the beam to ${name}`, '0 km', 'format');
    return { kind: 'relay', name, longitudeRad, grazingHeightKm: grazingM / 1000 };
  }
  return {
    kind: 'ground',
    name,
    longitudeRad,
    latitudeRad: number(node, 'latitude') ?? 0,
    heightM: number(node, 'height') ?? 0,
    maskRad: number(node, 'mask') ?? 0,
  };
}

function readAntenna(
  node: CheckedNode,
  vehicle: Vehicle,
  joints: ReadonlySet<string>,
  context: ReadContext,
): readonly Antenna[] {
  const id = text(node, 'place');
  const place = vehicle.places.find((one) => one.id === id);
  const joint = text(node, 'joint');
  if (joint !== null && !joints.has(joint)) {
    context.problems.add('not-computable', spanOf(node, 'joint'), `no body says how "${joint}" turns`, {
      expected: 'turns { … } in a body of this joint',
    });
  }
  if (place === undefined) return [];
  if (place.positionM === null) {
    context.problems.add('not-computable', spanOf(node, 'place'), `"${place.id}" has no position for the antenna`, {
      expected: `position in place ${place.id}`,
    });
    return [];
  }
  const name = textAt(node, 0) ?? '';
  const clearanceM =
    number(node, 'clearance') ??
    filledIn(context, OWN_SURFACE_M, node.span, `clearance of antenna ${name}`, `${OWN_SURFACE_M} m`, 'format');
  return [
    {
      name,
      positionM: place.positionM,
      joint: joint !== null && joints.has(joint) ? joint : null,
      cone: null,
      clearanceM,
    },
  ];
}

function readFieldRegion(node: CheckedNode, context: ReadContext): FieldRegion {
  return {
    // Kept in nT to the last whole one: the unit of the field models.
    thresholdNt: Math.round((number(node, 'threshold') ?? 0) * 1e12) / 1000,
    at: (text(node, 'at') ??
      filledIn(context, 'ground', node.span, 'where the weak field is taken', 'on the ground below', 'format')) as
      | 'ground'
      | 'vehicle',
    beyondModel: 'hold-last',
  };
}

function readAttitude(node: CheckedNode, context: ReadContext): AttitudeLaw | null {
  const { problems } = context;
  const law = text(node, 'law');
  const frame = text(node, 'frame');
  const rows = childrenOf(node, 'row');
  const wants = (ok: boolean, property: string, expected: string): boolean => {
    if (!ok && !node.source.entries.some((entry) => entry.name === property))
      problems.add('missing-property', node.nameSpan, `an attitude law=${law} says its ${property}`, { expected });
    return ok;
  };
  if (law === null) return null;
  if (law === 'table') {
    for (const property of ['yaw', 'pitch', 'roll']) {
      if (node.properties.has(property))
        problems.add('two-ends', spanOf(node, property), `a table says its attitude in rows, not in ${property}`, {
          expected: 'row at= w= x= y= z=',
        });
    }
    if (!wants(frame !== null, 'frame', 'frame=lvlh | teme | j2000')) return null;
    return readTable(node, rows, frame === 'lvlh' ? 'LVLH' : frame === 'teme' ? 'TEME' : 'EQJ', context);
  }
  if (rows[0] !== undefined) {
    problems.add('two-ends', rows[0].span, `rows are for law=table, and the law is ${law}`, { expected: 'law=table' });
  }
  const angles = ['yaw', 'pitch', 'roll'].map((property) => {
    const value = number(node, property);
    wants(value !== null, property, `${property}=, an angle`);
    return value ?? 0;
  });
  const turn = quaternionOfYawPitchRoll(angles[0] ?? 0, angles[1] ?? 0, angles[2] ?? 0);
  if (law === 'local-vertical') return { kind: 'local-vertical', lvlhFromBody: turn };
  if (!wants(frame !== null, 'frame', 'frame=teme | j2000')) return null;
  if (frame === 'lvlh') {
    problems.add('two-ends', spanOf(node, 'frame'), 'an inertial attitude stands still in teme or j2000, not in lvlh', {
      expected: 'law=local-vertical, or frame=teme | j2000',
    });
    return null;
  }
  return { kind: 'inertial', frame: frame === 'teme' ? 'TEME' : 'EQJ', frameFromBody: turn };
}

function readTable(
  node: CheckedNode,
  rows: readonly CheckedNode[],
  frame: 'LVLH' | 'TEME' | 'EQJ',
  context: ReadContext,
): AttitudeLaw | null {
  const { problems } = context;
  if (rows.length < 2) {
    problems.add('missing-node', node.nameSpan, 'an attitude table has two rows or more', {
      expected: 'row at="2031-09-14T11:00:00Z" w=1 x=0 y=0 z=0',
    });
    return null;
  }
  const read: AttitudeRow[] = [];
  for (const row of rows) {
    const part = (name: string): number => number(row, name) ?? 0;
    const utcMs = part('at');
    const before = read.at(-1);
    if (before !== undefined && utcMs <= before.utcMs) {
      problems.add('interval-backwards', row.span, 'this row of the attitude table is not later than the one before', {
        expected: 'rows in order of time',
      });
    }
    try {
      const frameFromBody = normalized([part('w'), part('x'), part('y'), part('z')]);
      read.push({ utcMs, frameFromBody });
    } catch (cause) {
      if (!(cause instanceof Fault)) throw cause;
      const whole = ['w', 'x', 'y', 'z'].every((name) => row.properties.has(name));
      if (whole) {
        problems.add('bad-direction', row.span, 'these four numbers are no rotation: their length is not 1', {
          expected: 'w, x, y, z of unit length, scalar first',
        });
      }
    }
  }
  return { kind: 'table', frame, rows: read };
}

/** Every computed window says what it lacks, at its own place. */
export function reportUncomputable(
  nodes: readonly CheckedNode[],
  windows: readonly WindowSet[],
  sky: CampaignSky,
  vehicle: Vehicle,
  context: ReadContext,
): void {
  // What is stated and could not be read has been reported in its own place.
  const isStated = (name: string): boolean => nodes.some((node) => node.name === name);
  for (const { computed, id, span } of windows) {
    if (computed === undefined) continue;
    const lacks = (what: string, expected: string): void => report(context, span, id, what, expected);
    if (!isStated('orbit')) lacks('no orbit is stated', 'orbit { elements | omm | kepler }');
    if ((computed.what === 'coverage' || computed.what === 'coverage-gap') && sky.partners.length === 0)
      lacks('nothing to talk to is stated', 'relay or ground-station');
    if (computed.what === 'field-region' && sky.fieldRegion === null)
      lacks('no region of weak field is stated', 'field-region threshold=');
    if (computed.place === null) continue;
    if (!isStated('attitude')) lacks('no attitude is stated', 'attitude law=');
    const place = vehicle.places.find((one) => one.id === computed.place);
    if (place === undefined) continue;
    if (place.positionM === null) lacks(`"${place.id}" has no position`, `position in place ${place.id}`);
    if (computed.what === 'sun-in-eyes' && !sky.sightLines.some((one) => one.place === place.id))
      lacks(`"${place.id}" has no line of sight`, `line-of-sight in place ${place.id}`);
  }
}

function report(context: ReadContext, span: Span, window: string, what: string, expected: string): void {
  context.problems.add('not-computable', span, `window ${window} cannot be computed: ${what}`, { expected });
}
