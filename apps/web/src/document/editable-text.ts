import { ProblemList } from '@handrail/eva/campaign/problem/problem';
import { type ParsedFile, parseFile } from '@handrail/eva/campaign/text/parse-file';
import { tell } from '../session/session-store.ts';
import { documentStore } from './document-store.ts';
import { FILE_NAME } from './working-copy.ts';

/** The text in hand as edits are made from; null while it has a syntax error, which the person is then told. */
export function editableText(): ParsedFile | null {
  const file = parseFile(FILE_NAME, documentStore.getState().copy.text, new ProblemList());
  if (file.document !== null) return file;
  tell('The text has a syntax error: mend it first');
  return null;
}
