/**
 * Campaign text of an older version brought up to date: through JSON, node by node. Comments stay; the layout becomes ours.
 */
import { FORMAT_VERSION } from '@handrail/eva/campaign/format-version';
import type { ParsedFile } from '@handrail/eva/campaign/text/parse-file';
import { type Migration, migrate } from '../version/migrate.ts';
import { type CampaignJson, campaignFromJson, campaignToJson } from './campaign-json.ts';
import { CAMPAIGN_MIGRATIONS } from './campaign-migrations.ts';

/**
 * @param files of one version each; a file that is up to date is not touched
 * @throws Fault `wire/newer-version`, `wire/no-migration`, `wire/broken-text`
 */
export function upgradeText(
  files: readonly ParsedFile[],
  target: number = FORMAT_VERSION,
  migrations: readonly Migration<CampaignJson>[] = CAMPAIGN_MIGRATIONS,
): readonly { readonly name: string; readonly text: string; readonly done: readonly string[] }[] {
  return files.map((file) => {
    const version = versionOf(file);
    if (version === target) return { name: file.source.name, text: file.source.text, done: [] };
    const { data, done } = migrate(campaignToJson([file]), version, target, migrations);
    const [written] = campaignFromJson({
      ...data,
      files: data.files.map((one) => ({
        ...one,
        nodes: one.nodes.map((node) => (node.node === 'handrail' ? { ...node, arguments: [target] } : node)),
      })),
    });
    return { name: file.source.name, text: written?.text ?? '', done };
  });
}

/** A file that does not say its version is read as the present one: the reader then asks for it. */
function versionOf(file: ParsedFile): number {
  const value = file.nodes.find((node) => node.name === 'handrail')?.entries[0]?.value;
  return typeof value === 'number' ? value : FORMAT_VERSION;
}
