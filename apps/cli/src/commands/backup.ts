/** `handrail backup`: all that a served folder keeps, as one file. */
import type { Command } from 'commander';
import { runServer } from '../run-server.ts';

export function register(program: Command): void {
  program
    .command('backup')
    .argument('<folder>', 'folder that is served')
    .argument('<file>', 'where the copy goes')
    .description('copy all campaigns, versions and accounts of a served folder; the server may go on')
    .action(async (folder: string, file: string) => {
      await runServer(['backup', folder, file]);
    });
}
