/** `handrail verify-proof FILE`: replays the proofs that `plan --proof` wrote with the checker, which shares no reasoning with the engine. */
import { checkProof } from '@handrail/solver-checker/check-proof';
import { verifyProof } from '@handrail/wire/answers/verify-proof';
import type { Command } from 'commander';
import { EXIT } from '../exit-code.ts';
import { ExitError } from '../exit-error.ts';
import { readProofs } from '../plan/proof-file.ts';
import { print } from '../terminal/output.ts';
import { printAnswer } from '../terminal/print-answer.ts';

export function register(program: Command): void {
  program
    .command('verify-proof')
    .argument('<file>', 'file that "handrail plan --proof" wrote')
    .option('--json', 'answer as JSON')
    .description('check the proofs of a plan with a second program')
    .action((file: string, options: { json?: boolean }) => {
      const verdicts = readProofs(file).map(({ eva, model, lines }) => {
        const { isAccepted, claim, closed, refusal } = checkProof(model, lines);
        return {
          eva,
          lines: lines.length,
          isAccepted,
          claim,
          levels: model.objectives.map(({ name }, level) => ({ name, provedValue: closed[level] ?? null })),
          refusal,
        };
      });
      const code = verdicts.every((verdict) => verdict.isAccepted) ? EXIT.fine : EXIT.findings;
      if (options.json === true) printAnswer(verifyProof, code, { file, evas: verdicts });
      else for (const verdict of verdicts) print(words(verdict));
      if (code !== EXIT.fine) throw new ExitError(code);
    });
}

function words(verdict: {
  readonly eva: string;
  readonly lines: number;
  readonly isAccepted: boolean;
  readonly claim: string | null;
  readonly levels: readonly { readonly name: string; readonly provedValue: number | null }[];
  readonly refusal: { readonly line: number; readonly reason: string } | null;
}): string {
  if (verdict.refusal !== null)
    return `EVA ${verdict.eva}: refused at line ${verdict.refusal.line} of ${verdict.lines}: ${verdict.refusal.reason}`;
  const levels = verdict.levels
    .filter(({ provedValue }) => provedValue !== null)
    .map(({ name, provedValue }) => `${name} ${provedValue}`);
  return `EVA ${verdict.eva}: accepted, ${verdict.lines} lines; ${verdict.claim ?? 'nothing'} claimed${levels.length === 0 ? '' : `, proved for ${levels.join(', ')} (solver units: 10 s)`}`;
}
