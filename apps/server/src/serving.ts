/** What every route may use: one object, made when the server starts. */
import type { Role } from '@handrail/wire/api/api-types';
import type { CampaignFolder } from './campaigns/campaign-folder.ts';
import type { LiveHub } from './live/live-hub.ts';
import type { ServerOptions } from './server-options.ts';
import type { Storage } from './storage/storage.ts';

export interface Serving {
  readonly options: ServerOptions;
  readonly storage: Storage;
  readonly folder: CampaignFolder;
  readonly live: LiveHub;
  /** For the first account; printed on the terminal. */
  readonly setupToken: string;
}

export interface Person {
  readonly id: string;
  readonly name: string;
  readonly roles: readonly Role[];
}
