/** The `handrail` command: one file per command under commands/; here only their register and what happens when one ends badly. */
import { Fault } from '@handrail/quantity/fault';
import { Command, CommanderError } from 'commander';
import { registrations } from './commands.ts';
import { EXIT } from './exit-code.ts';
import { ExitError } from './exit-error.ts';
import { PROGRAM_VERSION } from './program-version.ts';
import { complain } from './terminal/output.ts';

const program = new Command('handrail')
  .description(
    'Plans, checks and briefs spacewalks.\n\n' +
      "Planning aid, not flight-certified: the operator's flight rules, the suit maker's limits and the flight surgeon prevail.",
  )
  .version(PROGRAM_VERSION)
  .showHelpAfterError('"handrail help" lists the commands')
  .exitOverride();
for (const register of registrations) register(program);
for (const command of program.commands) command.exitOverride();

try {
  await program.parseAsync(process.argv);
} catch (error) {
  process.exitCode = endedBadly(error);
}

function endedBadly(error: unknown): number {
  if (error instanceof CommanderError) return error.exitCode === 0 ? EXIT.fine : EXIT.badInput;
  if (error instanceof ExitError) {
    if (error.message !== '') complain(error.message);
    return error.code;
  }
  if (error instanceof Fault) {
    complain(`${error.message}${error.advice === null ? '' : `\n  mend  ${error.advice}`}\n  code  ${error.code}`);
    return EXIT.badInput;
  }
  complain(
    `Handrail itself failed: ${error instanceof Error ? error.message : String(error)}\nThis is a fault of the program, not of your campaign. Set HANDRAIL_TRACE=1 and run it again to see where.`,
  );
  if (process.env['HANDRAIL_TRACE'] === '1' && error instanceof Error) complain(error.stack ?? '');
  return EXIT.badInput;
}
