/** The command line as a person has it: packed once into a folder of its own, run as a process, its two outputs kept apart. */
import { spawn, spawnSync } from 'node:child_process';
import { mkdtempSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { buildCli } from '../../../tools/build-cli.ts';

export const EXAMPLES = join(import.meta.dirname, '..', '..', '..', 'examples');

export interface Ended {
  readonly code: number | null;
  readonly out: string;
  readonly err: string;
}

export class PackedHandrail {
  /** Outside the checkout; the files of a test go here, and commands run here. */
  readonly folder: string;
  private readonly program: string;

  private constructor(folder: string, program: string) {
    this.folder = folder;
    this.program = program;
  }

  static async packed(): Promise<PackedHandrail> {
    const folder = mkdtempSync(join(tmpdir(), 'handrail-commands-'));
    return new PackedHandrail(folder, await buildCli(join(folder, 'program')));
  }

  path(name: string): string {
    return join(this.folder, name);
  }

  run(args: readonly string[], options: { env?: Record<string, string>; uid?: number } = {}): Ended {
    const { env = {}, uid } = options;
    const run = spawnSync(process.execPath, [this.program, ...args], {
      cwd: this.folder,
      encoding: 'utf8',
      env: { ...process.env, ...env },
      maxBuffer: 1 << 26,
      ...(uid === undefined ? {} : { uid }),
    });
    return { code: run.status, out: run.stdout, err: run.stderr };
  }

  /** Sends Ctrl-C as soon as stderr matches. */
  async interrupted(args: readonly string[], when: RegExp): Promise<Ended & { readonly sawIt: boolean }> {
    const child = spawn(process.execPath, [this.program, ...args], { cwd: this.folder });
    const text = { out: '', err: '' };
    let sawIt = false;
    child.stdout.on('data', (data: Buffer) => (text.out += data.toString()));
    child.stderr.on('data', (data: Buffer) => {
      text.err += data.toString();
      if (!sawIt && when.test(text.err)) {
        sawIt = true;
        child.kill('SIGINT');
      }
    });
    const code = await new Promise<number | null>((resolve) => {
      child.on('close', resolve);
    });
    return { code, ...text, sawIt };
  }

  remove(): void {
    rmSync(this.folder, { recursive: true, force: true });
  }
}

/** Never seen by a person: a stack, a colour code in a file, a word of a program. */
export function isClean({ out, err }: Ended): boolean {
  // oxlint-disable-next-line no-control-regex
  return !/^ {4}at \S|\u001b\[|undefined|\[object |NaN|triggerUncaughtException/m.test(out + err);
}
