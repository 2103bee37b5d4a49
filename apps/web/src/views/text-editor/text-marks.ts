/** What is wrong, and where in the text: problems of the text itself, and findings that a line of it is the cause of. */
import type { Diagnostic } from '@codemirror/lint';
import type { Text } from '@codemirror/state';
import type { Span } from '@handrail/eva/campaign/span';
import { look } from '../../session/session-store.ts';
import type { DerivedState } from '../../derived/derived-store.ts';

export function textMarks(text: Text, { opening, judged }: DerivedState): readonly Diagnostic[] {
  const marks: Diagnostic[] = [];
  for (const problem of opening.value?.problems ?? []) {
    const place = placeOf(text, problem.span);
    const { nearest } = problem;
    const { from, to } = place;
    marks.push({
      ...place,
      severity: problem.severity,
      source: problem.code,
      message: [
        problem.what,
        problem.expected === null ? '' : `expected ${problem.expected}`,
        nearest === null ? '' : `did you mean "${nearest}"?`,
      ]
        .filter((words) => words !== '')
        .join('\n'),
      actions:
        nearest === null || text.sliceString(from, to).includes('\n')
          ? []
          : [
              {
                name: `Write "${nearest}"`,
                apply: (view, at, end) => {
                  const word = view.state.sliceDoc(at, end);
                  const isQuoted = word.startsWith('"') && word.endsWith('"');
                  view.dispatch({ changes: { from: at, to: end, insert: isQuoted ? `"${nearest}"` : nearest } });
                },
              },
            ],
    });
  }
  for (const finding of judged.value?.findings ?? []) {
    if (finding.where.span === null || finding.waiver !== null || finding.severity === 'note') continue;
    const { stint, petS } = finding.where;
    marks.push({
      ...placeOf(text, finding.where.span),
      severity: finding.severity === 'unknown' ? 'info' : finding.severity,
      source: finding.rule,
      message: [finding.title, finding.why, finding.mend === null ? '' : `mend: ${finding.mend}`]
        .filter((words) => words !== '')
        .join('\n'),
      actions:
        stint === null
          ? []
          : [
              {
                name: 'See it on the chart',
                apply: () =>
                  look({
                    view: 'plan',
                    selection: { what: 'stint', id: stint },
                    ...(petS === null ? {} : { minuteS: petS }),
                    ...(finding.where.eva === null ? {} : { evaId: finding.where.eva }),
                  }),
              },
            ],
    });
  }
  return marks.toSorted((a, b) => a.from - b.from);
}

/** A span is of the text that was read; the text may have grown since. */
function placeOf(text: Text, span: Span): { readonly from: number; readonly to: number } {
  const line = text.line(Math.min(Math.max(1, span.line), text.lines));
  const from = Math.min(line.to, line.from + span.column - 1);
  return { from, to: Math.max(from, Math.min(line.to, from + Math.max(1, span.length))) };
}
