/** `handrail open`: one file on a screen, on this machine, without accounts. */
import type { Command } from 'commander';
import { runServer, serverOptions } from '../run-server.ts';

export function register(program: Command): void {
  program
    .command('open')
    .argument('<file>', 'campaign file; every saved version is written to it, and kept beside it')
    .option('--port <n>', 'port; absent: 4600, or the next that is free')
    .description('work on one file in the browser, on this machine alone, without accounts')
    .action(async (file: string, options: { port?: string }) => {
      await runServer(['open', file, ...serverOptions({ port: options.port })]);
    });
}
