/** Runs commands of the command line in this process; what they write is caught on its way out. */
import { Command } from 'commander';

interface CommandFile {
  readonly register: (program: Command) => void;
}
export interface Ran {
  readonly status: number;
  readonly stdout: string;
  readonly stderr: string;
}

/** @param names of the files under apps/cli/src/commands that may be asked for */
export async function commandRunner(...names: readonly string[]): Promise<(...words: string[]) => Promise<Ran>> {
  // The command line is an application, not a package: it is loaded from where it stands.
  const files: CommandFile[] = [];
  for (const name of names) {
    files.push(
      (await import(new URL(`../../apps/cli/src/commands/${name}.ts`, import.meta.url).pathname)) as CommandFile,
    );
  }
  return async (...words) => {
    const program = new Command('handrail').exitOverride();
    for (const { register } of files) register(program);
    const [out, err] = [caught(process.stdout), caught(process.stderr)];
    let status = 0;
    let last = '';
    try {
      await program.parseAsync(['node', 'handrail', ...words]);
    } catch (error) {
      if (!(error instanceof Error) || error.name !== 'ExitError') throw error;
      status = (error as Error & { code: number }).code;
      last = error.message;
    } finally {
      out.release();
      err.release();
    }
    return { status, stdout: out.text(), stderr: err.text() + last };
  };
}

function caught(stream: NodeJS.WriteStream) {
  const write = stream.write.bind(stream);
  let text = '';
  stream.write = (chunk: string | Uint8Array) => {
    text += typeof chunk === 'string' ? chunk : new TextDecoder().decode(chunk);
    return true;
  };
  return {
    text: () => text,
    release: () => {
      stream.write = write;
    },
  };
}
