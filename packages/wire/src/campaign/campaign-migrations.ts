/**
 * Steps between versions of the campaign format, oldest first. Version 1 is the first, so there is none yet; a new version
 * adds one step here and one file that the old version wrote to the tests.
 */
import type { Migration } from '../version/migrate.ts';
import type { CampaignJson } from './campaign-json.ts';

export const CAMPAIGN_MIGRATIONS: readonly Migration<CampaignJson>[] = [];
