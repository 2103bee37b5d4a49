/** The window of turns and torque of a fastener as the campaign states it: by its drawing, or from thread, friction and preload. */
import { Fault } from '@handrail/quantity/fault';
import type { Hardware } from '../campaign/campaign.ts';
import { type DriveWindow, statedWindow, windowFromJoint } from './drive-window.ts';
import { metricThread, type Thread } from './thread-geometry.ts';
import { standardThread } from './thread-tables.ts';

export interface FastenerWindow {
  readonly piece: Hardware;
  /** null: too little is stated for it. */
  readonly window: DriveWindow | null;
  /** joint: worked out; drawing: turns and torque with their tolerances. */
  readonly basis: 'joint' | 'drawing' | null;
  /** Properties that are still wanted for it; empty where there is a window. */
  readonly missing: readonly string[];
  /** Why the figures cannot be right; null: nothing against them. */
  readonly refused: string | null;
}

const FASTENER_KINDS: readonly string[] = ['bolt', 'captive-fastener'];

export function isFastener(piece: Hardware): boolean {
  return FASTENER_KINDS.includes(piece.kind);
}

const JOINT = [
  'thread',
  'engagement',
  'snug-turns',
  'nut-factor',
  'preload-least',
  'preload-most',
  'drive-source',
] as const;
const DRAWING = ['turns-tolerance', 'torque-tolerance'] as const;

/**
 * @param tool the driver, whose accuracy and resolution widen a worked-out window; null or a tool that states neither: none is assumed, and
 *   the window lacks them
 */
export function fastenerWindow(piece: Hardware, tool: Hardware | null): FastenerWindow {
  const none = { piece, window: null, basis: null, missing: [], refused: null };
  const says = (name: string): boolean => piece.properties[name] !== undefined;
  if (JOINT.some((name) => name !== 'drive-source' && says(name))) {
    const toolLacks = ['torque-accuracy', 'turn-resolution'].filter((name) => tool?.properties[name] === undefined);
    const missing = [
      ...JOINT.filter((name) => !says(name)),
      ...toolLacks.map((name) => `${name} of ${tool === null ? 'its tool' : tool.id}`),
    ];
    if (missing.length > 0 || tool === null) return { ...none, missing };
    return worked(piece, tool);
  }
  if (!DRAWING.some(says)) return { ...none, missing: [`${DRAWING.join(' and ')}, or ${JOINT.join(', ')}`] };
  const missing = [
    ...DRAWING.filter((name) => !says(name)),
    ...(piece.turns === null ? ['turns'] : []),
    ...(piece.torqueNm === null ? ['torque'] : []),
  ];
  const { turns, torqueNm } = piece;
  if (missing.length > 0 || turns === null || torqueNm === null) return { ...none, missing };
  return attempt(piece, 'drawing', () =>
    statedWindow(
      { likely: turns, tolerance: figure(piece, 'turns-tolerance') },
      { likely: torqueNm, toleranceShare: figure(piece, 'torque-tolerance') / torqueNm },
    ),
  );
}

function worked(piece: Hardware, tool: Hardware): FastenerWindow {
  const source = String(piece.properties['drive-source']);
  const band = (name: string) => ({
    low: figure(piece, `${name}-least`, name),
    likely: figure(piece, name),
    high: figure(piece, `${name}-most`, name),
    source,
  });
  return attempt(piece, 'joint', () =>
    windowFromJoint({
      thread: namedThread(String(piece.properties['thread'])),
      engagementM: band('engagement'),
      joint: null,
      snugTurns: band('snug-turns'),
      nutFactor: band('nut-factor'),
      preloadN: { least: figure(piece, 'preload-least'), most: figure(piece, 'preload-most') },
      toolTorqueShare: figure(tool, 'torque-accuracy'),
      turnResolution: figure(tool, 'turn-resolution'),
    }),
  );
}

function attempt(piece: Hardware, basis: 'joint' | 'drawing', make: () => DriveWindow): FastenerWindow {
  try {
    return { piece, window: make(), basis, missing: [], refused: null };
  } catch (fault) {
    if (!(fault instanceof Fault)) throw fault;
    return { piece, window: null, basis, missing: [], refused: fault.message };
  }
}

/**
 * "M8" is the coarse thread; "M8x1" has its own pitch in millimetres; "3/8-16" is unified.
 * @throws Fault `fastener/unknown-thread`
 */
export function namedThread(size: string): Thread {
  const fine = /^M(\d+(?:\.\d+)?)x(\d+(?:\.\d+)?)$/.exec(size);
  return fine === null ? standardThread(size) : metricThread(size, Number(fine[1]) / 1000, Number(fine[2]) / 1000);
}

function figure(piece: Hardware, name: string, or = name): number {
  return Number(piece.properties[name] ?? piece.properties[or]);
}
