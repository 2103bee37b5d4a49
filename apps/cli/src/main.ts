/** The `handrail` command: one file per command under commands/; here only their register and what happens when one ends badly. */
import type { Problem } from '@handrail/eva/campaign/problem/problem';
import { Fault } from '@handrail/quantity/fault';
import { Command, CommanderError } from 'commander';
import { registrations } from './commands.ts';
import { EXIT, type ExitCode } from './exit-code.ts';
import { ExitError } from './exit-error.ts';
import { commandHelpEnd, PROGRAM_HELP_END } from './help-end.ts';
import { PROGRAM_VERSION } from './program-version.ts';
import { complain, hasAnswered } from './terminal/output.ts';
import { printFailure } from './terminal/print-failure.ts';
import { textWidth } from './terminal/wrap-text.ts';

const program = new Command('handrail')
  .description(
    'Plans, checks and briefs spacewalks.\n\n' +
      "Planning aid, not flight-certified: the operator's flight rules, the suit maker's limits and the flight surgeon prevail.",
  )
  .version(PROGRAM_VERSION)
  .configureHelp({ minWidthToWrap: 20 })
  .configureOutput({ getOutHelpWidth: () => textWidth(), getErrHelpWidth: () => textWidth(process.stderr.columns) })
  .showHelpAfterError('"handrail help" lists the commands')
  .addHelpText('after', PROGRAM_HELP_END)
  .exitOverride();
for (const register of registrations) register(program);
for (const command of program.commands) {
  command.addHelpText('after', commandHelpEnd(command.name()));
  command.exitOverride().showHelpAfterError(`"handrail ${command.name()} --help" says how it is used`);
}

// Whoever reads the answer may stop reading: "handrail explain | head" is no failure.
process.stdout.on('error', (error: NodeJS.ErrnoException) => {
  if (error.code !== 'EPIPE') throw error;
  process.exit(process.exitCode ?? EXIT.fine);
});

try {
  await program.parseAsync(process.argv);
} catch (error) {
  process.exitCode = endedBadly(error);
}

function endedBadly(error: unknown): ExitCode {
  if (error instanceof CommanderError) {
    if (error.exitCode === 0) return EXIT.fine;
    return without(EXIT.badInput, null, error.message.replace(/^error: /, ''));
  }
  if (error instanceof ExitError) {
    if (error.message === '') return error.code;
    complain(error.message);
    return without(error.code, null, error.message, error.problems);
  }
  if (error instanceof Fault) {
    const advice = error.advice === null ? '' : `\n  mend  ${error.advice}`;
    complain(`${error.message}${advice}\n  more  handrail explain ${error.code}`);
    return without(EXIT.badInput, error.code, error.message);
  }
  const message = `Handrail itself failed: ${error instanceof Error ? error.message : String(error)}`;
  complain(
    `${message}\nThis is a fault of the program, not of your campaign. Set HANDRAIL_TRACE=1 and run it again to see where.`,
  );
  if (process.env['HANDRAIL_TRACE'] === '1' && error instanceof Error) complain(error.stack ?? '');
  return without(EXIT.programFailed, null, message);
}

/** What has been said on stderr is said to a program too, when one asked. */
function without(
  exitCode: ExitCode,
  code: string | null,
  message: string,
  problems: readonly Problem[] = [],
): ExitCode {
  const [, , command = ''] = process.argv;
  if (process.argv.includes('--json') && !hasAnswered()) printFailure(command, exitCode, { code, message, problems });
  return exitCode;
}
