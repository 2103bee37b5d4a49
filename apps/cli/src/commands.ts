/** The commands, in the order in which help lists them. */
import type { Command } from 'commander';
import { register as check } from './commands/check.ts';
import { register as compare } from './commands/compare.ts';
import { register as demo } from './commands/demo.ts';
import { register as explain } from './commands/explain.ts';
import { register as plan } from './commands/plan.ts';
import { register as routes } from './commands/routes.ts';
import { register as show } from './commands/show.ts';

export const registrations: readonly ((program: Command) => void)[] = [
  plan,
  check,
  routes,
  show,
  explain,
  compare,
  demo,
];
