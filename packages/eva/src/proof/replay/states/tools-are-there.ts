import type { Finding } from '../../../finding/finding.ts';
import { boundaryS, type Placed, type ReplayContext, roleSpanS, utcMs } from '../replay-context.ts';
import { noticed, petSpan } from '../replay-finding.ts';
import type { StateHistory } from './state-history.ts';

/** A tool is on the person who works, or in a bag or at the worksite within reach, over every step that uses it; for one user. */
export function toolsAreThere(context: ReplayContext, history: StateHistory): Finding[] {
  const findings: Finding[] = [];
  for (const { placed } of context.flown) {
    const uses: { tool: string; fromS: number; toS: number; one: Placed }[] = [];
    for (const one of placed) {
      for (const { tool, steps, span } of one.effects?.tools ?? []) {
        if (steps.length === 0) continue;
        const missing = steps.find((step) => !withinReach(context, history, one, tool, step));
        if (missing !== undefined) {
          const where = whereIs(history, tool, utcMs(one, boundaryS(one, missing)), one.stint.key).join(', in ');
          findings.push(
            noticed('replay/tools-are-there', {
              title: `"${one.stint.title}" uses ${context.hardware.get(tool)?.title ?? tool}, which is not there`,
              why: `step ${missing + 1} needs it; it is at ${where}`,
              mend: `take ${tool} along before`,
              eva: one.eva,
              stint: one.stint.key,
              step: missing,
              petS: boundaryS(one, missing),
              span,
            }),
          );
        }
        const fromS = boundaryS(one, Math.min(...steps));
        uses.push({ tool, fromS, toS: boundaryS(one, Math.max(...steps) + 1), one });
      }
    }
    findings.push(...sharedTools(context, uses));
  }
  return findings;
}

function sharedTools(
  context: ReplayContext,
  uses: readonly { tool: string; fromS: number; toS: number; one: Placed }[],
): Finding[] {
  return uses.flatMap((a, at) =>
    uses
      .slice(at + 1)
      .filter((b) => a.tool === b.tool && a.one !== b.one && a.fromS < b.toS && b.fromS < a.toS)
      .map((b) =>
        noticed('replay/one-user-of-a-tool', {
          title: `Two stints use ${context.hardware.get(a.tool)?.title ?? a.tool} at once`,
          why: `${a.one.stint.key} ${petSpan(a.fromS, a.toS)}, ${b.one.stint.key} ${petSpan(b.fromS, b.toS)}`,
          mend: 'let one end before the other starts, or bring a second one',
          eva: b.one.eva,
          stint: b.one.stint.key,
          petS: Math.max(a.fromS, b.fromS),
          span: b.one.stint.span,
        }),
      ),
  );
}

function withinReach(
  context: ReplayContext,
  history: StateHistory,
  placed: Placed,
  tool: string,
  step: number,
): boolean {
  const startS = boundaryS(placed, step);
  const chain = whereIs(history, tool, utcMs(placed, startS), placed.stint.key);
  const end = chain.at(-1) ?? 'unknown';
  return (
    placed.stint.roles.some((role, index) => {
      const [fromS, toS] = roleSpanS(placed, role);
      if (startS < fromS || startS >= toS) return false;
      const body = placed.planned.assigned[index] ?? '';
      if (end === `person:${body}` || end === `arm:${body}`) return true;
      if (role.startOn !== null && end === `arm:${role.startOn}`) return true;
      return role.name !== 'arm' && (end === `place:${role.at}` || end === `place:${role.to}`);
    }) || fixedAt(context, chain, placed)
  );
}

/** Held by a piece that is itself part of the worksite (a socket, a bay): its own place counts. */
function fixedAt(context: ReplayContext, chain: readonly string[], placed: Placed): boolean {
  const last = chain.at(-1) ?? '';
  if (!last.startsWith('hardware:')) return false;
  let piece = context.hardware.get(last.slice('hardware:'.length));
  for (let depth = 0; piece !== undefined && depth <= context.hardware.size; depth++) {
    const { at } = piece;
    if (at.kind === 'place') return placed.stint.roles.some((role) => role.at === at.id || role.to === at.id);
    piece = at.kind === 'hardware' ? context.hardware.get(at.id) : undefined;
  }
  return false;
}

/** Holders from the nearest outward: "hardware:bag-1", "person:EV1". */
function whereIs(history: StateHistory, item: string, ms: number, viewer: string): readonly string[] {
  const chain: string[] = [];
  let at = item;
  while (chain.length < 50) {
    const variable = `${at}.holder`;
    const seen = history.before(variable, ms, viewer).value;
    if (seen === 'unknown') return chain.length === 0 ? ['unknown'] : chain;
    chain.push(seen);
    if (!seen.startsWith('hardware:')) return chain;
    at = seen.slice('hardware:'.length);
  }
  return chain;
}
