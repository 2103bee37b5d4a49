/** The commands, in the order in which help lists them. */
import type { Command } from 'commander';
import { register as backup } from './commands/backup.ts';
import { register as check } from './commands/check.ts';
import { register as compare } from './commands/compare.ts';
import { register as demo } from './commands/demo.ts';
import { register as explain } from './commands/explain.ts';
import { register as exportCampaign } from './commands/export.ts';
import { register as fasteners } from './commands/fasteners.ts';
import { register as importCampaign } from './commands/import.ts';
import { register as light } from './commands/light.ts';
import { register as newCampaign } from './commands/new.ts';
import { register as open } from './commands/open.ts';
import { register as plan } from './commands/plan.ts';
import { register as prebreathe } from './commands/prebreathe.ts';
import { register as prove } from './commands/prove.ts';
import { register as replan } from './commands/replan.ts';
import { register as restore } from './commands/restore.ts';
import { register as routes } from './commands/routes.ts';
import { register as serve } from './commands/serve.ts';
import { register as show } from './commands/show.ts';
import { register as sky } from './commands/sky.ts';
import { register as slip } from './commands/slip.ts';
import { register as supplies } from './commands/supplies.ts';
import { register as verifyProof } from './commands/verify-proof.ts';
import { register as wayhome } from './commands/wayhome.ts';
import { register as whatif } from './commands/whatif.ts';
import { register as why } from './commands/why.ts';

export const registrations: readonly ((program: Command) => void)[] = [
  plan,
  check,
  prove,
  wayhome,
  routes,
  show,
  sky,
  light,
  slip,
  supplies,
  prebreathe,
  fasteners,
  explain,
  compare,
  why,
  whatif,
  replan,
  verifyProof,
  newCampaign,
  exportCampaign,
  importCampaign,
  open,
  serve,
  backup,
  restore,
  demo,
];
