/**
 * Runs the server program as a process of its own: apps share formats, not code. Packed it lies beside this program; in the
 * checkout it is run from its source.
 */
import { spawn } from 'node:child_process';
import { existsSync } from 'node:fs';
import { dirname, join } from 'node:path';
import { fileURLToPath } from 'node:url';
import { EXIT } from './exit-code.ts';
import { ExitError } from './exit-error.ts';

const HERE = dirname(fileURLToPath(import.meta.url));
const PACKED = join(HERE, 'server', 'server.js');
const SOURCE = join(HERE, '..', '..', 'server', 'src', 'main.ts');

/**
 * Ends when the server does; Ctrl-C goes to both, and the server ends in its own time.
 * @throws ExitError with code 2; the server has said why
 */
export async function runServer(args: readonly string[]): Promise<void> {
  const program = existsSync(PACKED) ? [PACKED] : existsSync(SOURCE) ? ['--import', 'tsx', SOURCE] : null;
  if (program === null) {
    throw new ExitError(
      EXIT.badInput,
      'the server is not part of this copy of the program; run it from a checkout, or pack it with tools/build-server.ts',
    );
  }
  const child = spawn(process.execPath, [...program, ...args], { stdio: 'inherit' });
  const wait = (): void => {};
  process.on('SIGINT', wait);
  const code = await new Promise<number>((resolve) => child.once('exit', (status) => resolve(status ?? 0)));
  process.off('SIGINT', wait);
  if (code !== 0) throw new ExitError(EXIT.badInput, 'the server ended (it has said why above)');
}

/** Options of the command line as arguments of the server. */
export function serverOptions(options: Readonly<Record<string, string | undefined>>): readonly string[] {
  return Object.entries(options).flatMap(([name, value]) => (value === undefined ? [] : [`--${name}`, value]));
}
