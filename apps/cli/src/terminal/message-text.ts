/**
 * A finding or a problem for the terminal: the words as `formatFinding` and `formatProblem` make them, wrapped under their labels
 * and, on a terminal, in colours. The words say it all without.
 */
import type { Problem } from '@handrail/eva/campaign/problem/problem';
import { formatProblem } from '@handrail/eva/campaign/problem/format-problem';
import type { Finding } from '@handrail/eva/finding/finding';
import { formatFinding } from '@handrail/eva/finding/format-finding';
import { coloursOf, severityWord } from './colours.ts';
import { textWidth, wrapLines, wrapText } from './wrap-text.ts';

type Colours = ReturnType<typeof coloursOf>;

export function findingText(finding: Finding, width = textWidth()): string {
  return messageText(formatFinding(finding, { width }), width, coloursOf(process.stdout));
}

/** A blank line between each two. */
export function findingsText(findings: readonly Finding[], width = textWidth()): string {
  return findings.map((finding) => findingText(finding, width)).join('\n\n');
}

export function problemText(problem: Problem, width = textWidth(process.stderr.columns)): string {
  return messageText(formatProblem(problem), width, coloursOf(process.stderr));
}

/** "error  what is wrong      subject/id", then lines "  label  words". */
function messageText(text: string, width: number, colours: Colours): string {
  const [head = '', ...rest] = text.split('\n');
  return [headText(head, width, colours), ...rest.map((line) => labelled(line, width, colours))].join('\n');
}

function headText(head: string, width: number, colours: Colours): string {
  const [, severity = '', title = '', gap = '', id = ''] = /^(\S+ +)(.*?)(?:( +)([a-z-]+\/[a-z-]+))?$/.exec(head) ?? [];
  const indent = severity.length;
  const word = severity.trimEnd();
  const start = `${severityWord(word, colours)}${severity.slice(word.length)}`;
  // The line "more" says the id too, so a long title may have the room.
  if (head.length <= width) return `${start}${colours.bold(title)}${gap}${colours.dim(id)}`;
  const lines = wrapLines(title, Math.max(8, width - indent));
  return start + lines.map((line) => colours.bold(line)).join(`\n${' '.repeat(indent)}`);
}

function labelled(line: string, width: number, colours: Colours): string {
  const [, label = '', words = line] = /^( {2}\S+ +)(.*)$/.exec(line) ?? [];
  return `${colours.dim(label)}${wrapText(words, width, label.length)}`;
}
