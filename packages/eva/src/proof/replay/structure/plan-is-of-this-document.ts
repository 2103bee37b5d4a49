import type { Finding } from '../../../finding/finding.ts';
import type { ReplayContext } from '../replay-context.ts';
import { noticed } from '../replay-finding.ts';

/** The plan names the document and the library that it was made for; any change makes what it claims expire. */
export function planIsOfThisDocument({ campaign, timeline }: ReplayContext): Finding[] {
  const findings: Finding[] = [];
  if (timeline.format !== 'handrail-timeline' || timeline.version !== 1) {
    findings.push(
      noticed('replay/format-is-known', {
        title: 'The timeline is in a format that this version does not read',
        why: `it says ${timeline.format} ${timeline.version}; read is handrail-timeline 1`,
        mend: 'plan again with this version',
      }),
    );
  }
  if (timeline.campaign !== campaign.id) {
    findings.push(
      noticed('replay/plan-is-of-this-campaign', {
        title: 'The timeline belongs to another campaign',
        why: `it was made for ${timeline.campaign}; this is ${campaign.id}`,
        span: campaign.span,
      }),
    );
  }
  if (timeline.documentHash !== campaign.documentHash) {
    findings.push(
      noticed('replay/plan-is-of-this-document', {
        title: 'The campaign has changed since this was planned: what the plan claims has expired',
        why: `planned for document ${timeline.documentHash.slice(0, 12)}, now ${campaign.documentHash.slice(0, 12)}`,
        mend: 'plan again, or check the plan anew against the changed document',
        span: campaign.span,
      }),
    );
  }
  const { library } = timeline;
  if (library.id !== campaign.library.id || library.version !== campaign.library.version) {
    findings.push(
      noticed('replay/plan-is-of-this-library', {
        title: 'The plan rests on another library of kinds',
        why: `planned with ${library.id} ${library.version}; the campaign pins ${campaign.library.id} ${campaign.library.version}`,
        mend: 'plan again with the pinned library',
        span: campaign.span,
      }),
    );
  }
  return findings;
}
