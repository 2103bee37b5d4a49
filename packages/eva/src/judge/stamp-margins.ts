/** The ways home that a stamp demands: a margin of 0 or more in each listed mode, over all pairs of progress, and nowhere unknown. */
import { formatDuration } from '@handrail/quantity/time';
import type { Finding } from '../finding/finding.ts';
import type { ModeMargin } from '../proof/claim/claim-parts.ts';
import { proved } from '../proof/claim/prove-finding.ts';
import { leastMargin } from '../wayhome/least-margin.ts';
import type { Mode } from '../wayhome/way-home-state.ts';
import type { WayHomeSurface } from '../wayhome/way-home-surface.ts';

export function modeMargins(surface: WayHomeSurface, modes: readonly Mode[]): readonly ModeMargin[] {
  return modes.map((mode) => {
    const least = leastMargin(surface, mode);
    let [unknownS, committedS] = [0, 0];
    for (const { petS, endS, worst } of surface.samples) {
      if (worst[mode].unknown.length > 0) unknownS += endS - petS;
      if (worst[mode].blocked.length > 0) committedS += endS - petS;
    }
    const { eva, limit } = surface;
    const [leastS, atPetS] = least === null ? [null, null] : [least.marginS, least.sample.endS];
    return { eva, mode, leastS, atPetS, limit, unknownS, committedS };
  });
}

/** What the rules on ways home leave out: a negative margin is theirs, a way that is not known is told here. */
export function marginFindings(margins: readonly ModeMargin[]): readonly Finding[] {
  const found: Finding[] = [];
  const unlimited = new Set<string>();
  for (const { eva, mode, leastS, limit, unknownS, committedS } of margins) {
    if (limit === null) {
      if (unlimited.has(eva)) continue;
      unlimited.add(eva);
      found.push(
        proved('proof/way-home-has-a-margin', {
          severity: 'unknown',
          title: `Nothing says by when both must be in on EVA ${eva}`,
          why: 'no wall, no longest EVA and no suit is stated: the way home has no limit to be held against',
          mend: 'state longest on the EVA, or suit or suit-limit on the people',
          eva,
        }),
      );
    } else if (leastS === null && committedS === 0) {
      found.push(
        proved('proof/way-home-has-a-margin', {
          severity: 'unknown',
          title: `Cannot tell whether there is a way home in mode ${mode} on EVA ${eva}`,
          why: 'from no minute of it is the way home known',
          mend: `see why: handrail wayhome … --eva ${eva} --mode ${mode}`,
          eva,
        }),
      );
    } else if (unknownS > 0) {
      found.push(
        proved('proof/way-home-has-a-margin', {
          severity: 'unknown',
          title: `Cannot tell the way home in mode ${mode} over ${formatDuration(unknownS)} of EVA ${eva}`,
          why: 'somebody may stand there where the library has no way to close what is open',
          mend: `see which: handrail wayhome … --eva ${eva} --mode ${mode}`,
          eva,
        }),
      );
    }
  }
  return found;
}
