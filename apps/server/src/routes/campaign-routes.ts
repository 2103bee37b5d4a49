/** Campaigns, their versions, drafts and approvals. */
import type { VersionWhole } from '@handrail/wire/api/api-types';
import { lineChanges } from '../campaigns/line-changes.ts';
import { ServerFault } from '../server-fault.ts';
import type { Serving } from '../serving.ts';
import type { Handlers } from './handlers.ts';

export const campaignRoutes: Pick<
  Handlers,
  | 'listCampaigns'
  | 'addCampaign'
  | 'openCampaign'
  | 'listVersions'
  | 'openVersion'
  | 'saveVersion'
  | 'restoreVersion'
  | 'compareVersions'
  | 'openDraft'
  | 'keepDraft'
  | 'dropDraft'
  | 'listApprovals'
  | 'approveVersion'
> = {
  listCampaigns: async ({ storage }) => [...(await storage.campaigns.list())],
  addCampaign: async ({ folder, options }, { body, who }) => {
    if (options.file !== null) throw new ServerFault('campaign/one-file-is-open', `only ${options.file} is open here`);
    const { title, text, timeline } = body;
    const { id, head } = await folder.add(title, { text, timeline, message: 'First version', author: who.name });
    return { id, title, head };
  },
  openCampaign: async ({ folder }, { params }) => {
    const { id, title, head } = await folder.opened(params.id);
    return { id, title, head };
  },
  listVersions: async ({ storage, folder }, { params }) => {
    await folder.opened(params.id);
    return [...(await storage.campaigns.versions(params.id))];
  },
  openVersion: async (serving, { params }) => await versionOf(serving, params.id, params.number),
  saveVersion: async ({ folder, live }, { params, body, who }) => {
    const { parent, text, timeline, message } = body;
    try {
      return await folder.save(params.id, parent, { text, timeline, message, author: who.name });
    } finally {
      // Also where it was refused: the file may have been taken in.
      await live.poke(params.id);
    }
  },
  restoreVersion: async (serving, { params, body, who }) => {
    const { text, timeline } = await versionOf(serving, params.id, body.number);
    const work = { text, timeline, message: body.message, author: who.name };
    const saved = await serving.folder.save(params.id, body.parent, work);
    await serving.live.poke(params.id);
    return saved;
  },
  compareVersions: async (serving, { params, query }) => {
    const [from, to] = [await versionOf(serving, params.id, query.from), await versionOf(serving, params.id, query.to)];
    const { text: before, timeline: _before, ...fromHead } = from;
    const { text: after, timeline: _after, ...toHead } = to;
    return { from: fromHead, to: toHead, lines: lineChanges(before, after) };
  },
  openDraft: async ({ storage, folder }, { params, who }) => {
    await folder.opened(params.id);
    return await storage.campaigns.draft(params.id, who.id);
  },
  keepDraft: async ({ storage, folder }, { params, body, who }) => {
    await folder.opened(params.id);
    await storage.campaigns.keepDraft(params.id, who.id, { ...body, atUtcMs: Date.now() });
  },
  dropDraft: async ({ storage, folder }, { params, who }) => {
    await folder.opened(params.id);
    await storage.campaigns.dropDraft(params.id, who.id);
  },
  listApprovals: async ({ storage, folder }, { params }) => {
    await folder.opened(params.id);
    return [...(await storage.campaigns.approvals(params.id))];
  },
  approveVersion: async (serving, { params, body, who }) => {
    const { number } = await versionOf(serving, params.id, params.number);
    await serving.storage.campaigns.approve(params.id, { ...body, number, by: who.name, atUtcMs: Date.now() });
    await serving.live.poke(params.id);
  },
};

async function versionOf({ storage, folder }: Serving, id: string, number: number): Promise<VersionWhole> {
  const version = await storage.campaigns.version(id, number);
  if (version !== null) return version;
  const { head } = await folder.opened(id);
  throw new ServerFault('version/unknown', `"${id}" has versions 1 to ${head.number}, not ${number}`);
}
