/** `handrail serve`: a folder of campaigns for several people, with accounts. */
import type { Command } from 'commander';
import { runServer, serverOptions } from '../run-server.ts';

export function register(program: Command): void {
  program
    .command('serve')
    .argument('<folder>', 'folder of campaign files (*.kdl); each saved version is also written to its file')
    .option('--port <n>', 'port; absent: 4600, or the next that is free')
    .option('--host <name>', 'where to listen; absent: this machine alone')
    .option(
      '--public-address <url>',
      'address by which others reach it, such as https://plans.example: needed to listen for others',
    )
    .description('serve a folder of campaigns to several people, with accounts')
    .action(async (folder: string, options: { port?: string; host?: string; publicAddress?: string }) => {
      await runServer([
        'serve',
        folder,
        ...serverOptions({ port: options.port, host: options.host, 'public-address': options.publicAddress }),
      ]);
    });
}
