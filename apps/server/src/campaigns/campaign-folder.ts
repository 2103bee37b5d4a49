/** A folder of campaign files and the store of their versions, held together: nothing is acknowledged before both have it. */
import { mkdirSync, readdirSync, renameSync } from 'node:fs';
import { existsSync, readFileSync } from 'node:fs';
import { join } from 'node:path';
import type { VersionWhole } from '@handrail/wire/api/api-types';
import { ServerFault } from '../server-fault.ts';
import type { Campaign, CampaignStore } from '../storage/storage.ts';
import { hashesOf, prepareFiles, readFiles, writeBeside } from './campaign-files.ts';
import { judgeText, titleOf } from './judge-text.ts';

export interface WorkToSave {
  readonly text: string;
  readonly timeline: VersionWhole['timeline'];
  readonly message: string;
  readonly author: string;
}
/** Stands as the author of what was changed outside. */
const OUTSIDE = 'the file';

export class CampaignFolder {
  private readonly folder: string;
  private readonly campaigns: CampaignStore;
  private readonly say: (words: string) => void;
  /** The last save of each campaign: the next waits for it. */
  private readonly queues = new Map<string, Promise<unknown>>();

  constructor(folder: string, campaigns: CampaignStore, say: (words: string) => void) {
    this.folder = folder;
    this.campaigns = campaigns;
    this.say = say;
  }

  /** @param only takes this one file in; null: every *.kdl of the folder */
  async takeIn(only: string | null): Promise<void> {
    const files =
      only === null
        ? readdirSync(this.folder)
            .filter((name) => /^[^.].*\.kdl$/.test(name))
            .sort()
        : [only];
    const known = new Map((await this.campaigns.files()).map(({ id, file }) => [file, id] as const));
    for (const file of files) {
      const id = known.get(file);
      if (id === undefined) await this.takeInFirst(file);
      else await this.inTurn(id, async () => await this.meetFile(await this.opened(id)));
    }
  }

  async opened(id: string): Promise<Campaign> {
    const campaign = await this.campaigns.open(id);
    if (campaign === null) throw new ServerFault('campaign/unknown', `there is no campaign "${id}"`);
    return campaign;
  }

  async add(title: string, work: WorkToSave): Promise<Campaign> {
    for (let turn = 1; ; turn += 1) {
      const id = turn === 1 ? idFrom(title) : `${idFrom(title)}-${turn}`;
      const file = `${id}.kdl`;
      if (existsSync(join(this.folder, file))) continue;
      if (!(await this.campaigns.add({ id, title, file }, newVersion(file, work)))) continue;
      return await this.inTurn(id, async () => {
        const campaign = await this.opened(id);
        await this.mirror(campaign);
        return campaign;
      });
    }
  }

  /** @throws ServerFault `version/parent-is-not-head`, `file/cannot-be-written`; nothing was written then */
  async save(id: string, parent: number, work: WorkToSave): Promise<VersionWhole> {
    return await this.inTurn(id, async () => {
      const campaign = await this.opened(id);
      const { head } = await this.meetFile(campaign);
      if (head.number !== parent) throw new ServerFault('version/parent-is-not-head', whoWasFirst(parent, head), head);
      const prepared = this.prepare(campaign.file, work);
      const saved = await this.campaigns.save(id, parent, newVersion(campaign.file, work));
      if (saved === null) {
        prepared.discard();
        const now = (await this.opened(id)).head;
        throw new ServerFault('version/parent-is-not-head', whoWasFirst(parent, now), now);
      }
      prepared.place();
      await this.campaigns.setFileHashes(id, prepared.hashes);
      return saved;
    });
  }

  model(file: string, name: string): Buffer | null {
    const path = join(this.modelFolder(file), name);
    return existsSync(path) ? readFileSync(path) : null;
  }

  keepModel(file: string, name: string, bytes: Uint8Array): void {
    const folder = this.modelFolder(file);
    try {
      mkdirSync(folder, { recursive: true });
      renameSync(writeBeside(join(folder, name), bytes), join(folder, name));
    } catch (cause) {
      throw cannotWrite(name, cause);
    }
  }

  private modelFolder(file: string): string {
    return join(this.folder, `${file.replace(/\.kdl$/, '')}.models`);
  }

  private async takeInFirst(file: string): Promise<void> {
    const disk = readFiles(join(this.folder, file));
    if (disk.text === null) {
      this.say(`${file} is not taken in: it is not text in UTF-8`);
      return;
    }
    const title = titleOf(file, disk.text) ?? file.replace(/\.kdl$/, '');
    const work = { text: disk.text, timeline: disk.timeline, message: `Taken in from ${file}`, author: OUTSIDE };
    for (let turn = 1; ; turn += 1) {
      const name = idFrom(file.replace(/\.kdl$/, ''));
      const id = turn === 1 ? name : `${name}-${turn}`;
      if (!(await this.campaigns.add({ id, title, file }, newVersion(file, work)))) continue;
      await this.campaigns.setFileHashes(id, disk);
      return;
    }
  }

  /** Takes a file that was changed outside in as a version; writes one anew that an interrupted save left behind. */
  private async meetFile(campaign: Campaign): Promise<Campaign> {
    const { id, file, head } = campaign;
    const disk = readFiles(join(this.folder, file));
    const ours = hashesOf(head);
    const isOurText = disk.textHash === ours.textHash;
    const isOurPlan = disk.timelineHash === ours.timelineHash;
    if (isOurText && isOurPlan) return campaign;
    const isKnownText = isOurText || disk.textHash === campaign.textHash || disk.textHash === null;
    const isKnownPlan = isOurPlan || disk.timelineHash === campaign.timelineHash || disk.timelineHash === null;
    if (isKnownText && isKnownPlan) {
      // Ours from before, as far as it is there; the store has what is newer.
      if (disk.textHash !== campaign.textHash || disk.timelineHash !== campaign.timelineHash || !isOurText)
        await this.mirror(campaign);
      return campaign;
    }
    if (!isKnownText && disk.text === null) {
      throw new ServerFault('file/cannot-be-written', `${file} was changed outside and is not text in UTF-8 any more`);
    }
    const work = {
      text: isKnownText ? head.text : (disk.text ?? head.text),
      timeline: isKnownPlan ? head.timeline : disk.timeline,
      message: `${file} was changed outside`,
      author: OUTSIDE,
    };
    const taken = await this.campaigns.save(id, head.number, newVersion(file, work));
    await this.campaigns.setFileHashes(id, disk);
    if (taken !== null) this.say(`${file} was changed outside: taken in as version ${taken.number}`);
    return await this.opened(id);
  }

  private async mirror({ id, file, head }: Campaign): Promise<void> {
    const prepared = this.prepare(file, head);
    prepared.place();
    await this.campaigns.setFileHashes(id, prepared.hashes);
  }

  private prepare(file: string, work: Pick<VersionWhole, 'text' | 'timeline'>) {
    try {
      return prepareFiles(join(this.folder, file), work);
    } catch (cause) {
      throw cannotWrite(file, cause);
    }
  }

  private async inTurn<T>(id: string, run: () => Promise<T>): Promise<T> {
    const before = this.queues.get(id) ?? Promise.resolve();
    const mine = before.then(run, run);
    this.queues.set(id, mine);
    try {
      return await mine;
    } finally {
      if (this.queues.get(id) === mine) this.queues.delete(id);
    }
  }
}

function cannotWrite(file: string, cause: unknown): ServerFault {
  const why = (cause as NodeJS.ErrnoException).code ?? String(cause);
  return new ServerFault('file/cannot-be-written', `${file} could not be written (${why})`);
}

function newVersion(file: string, { text, timeline, message, author }: WorkToSave) {
  return { text, timeline, message, author, atUtcMs: Date.now(), ...judgeText(file, text) };
}

function whoWasFirst(parent: number, head: VersionWhole): string {
  return `your work stands on version ${parent}, but version ${head.number} is the newest: "${head.message}" by ${head.author}`;
}

/** Of whatever alphabet; what has no letter of ours becomes "campaign". */
export function idFrom(title: string): string {
  const plain = title.normalize('NFKD').replace(/\p{M}/gu, '').toLowerCase();
  const id = plain
    .replace(/[^a-z0-9]+/g, '-')
    .replace(/^-+|-+$/g, '')
    .slice(0, 50)
    .replace(/-+$/, '');
  return id === '' ? 'campaign' : id;
}
