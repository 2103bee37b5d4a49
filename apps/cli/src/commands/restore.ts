/** `handrail restore`: a copy made by backup becomes the store of a folder again. */
import type { Command } from 'commander';
import { runServer } from '../run-server.ts';

export function register(program: Command): void {
  program
    .command('restore')
    .argument('<file>', 'copy made by backup')
    .argument('<folder>', 'folder to serve from it; the server must not be running')
    .description('bring campaigns, versions and accounts back from a copy')
    .action(async (file: string, folder: string) => {
      await runServer(['restore', file, folder]);
    });
}
