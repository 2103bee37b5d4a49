import { inputLevel } from '@handrail/eva/campaign/input-level';
import { openCampaign } from '@handrail/eva/judge/open-campaign';

/** What a version remembers of its text: the level it reaches, how many errors it has. Any text may be kept; work in progress has errors. */
export function judgeText(name: string, text: string): { readonly level: number | null; readonly errors: number } {
  const { opened, reading, skyFault } = openCampaign([{ name, text }]);
  const errors = reading.problems.filter(({ severity }) => severity === 'error').length + (skyFault === null ? 0 : 1);
  return { level: opened === null ? null : inputLevel(opened.campaign, opened.hardware).level, errors };
}

/** The title that the text gives to its campaign; null: it gives none, or does not read. */
export function titleOf(name: string, text: string): string | null {
  const title = openCampaign([{ name, text }]).reading.campaign?.title ?? '';
  return title === '' ? null : title.slice(0, 200);
}
