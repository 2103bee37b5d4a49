import { accessSync, constants, statSync } from 'node:fs';
import { dirname } from 'node:path';
import { EXIT } from './exit-code.ts';
import { ExitError } from './exit-error.ts';

/** @throws ExitError with code 2 when a file of this name cannot be written where it should be */
export function mustBeWritable(file: string): void {
  const folder = dirname(file);
  const fail = (why: string): never => {
    throw new ExitError(EXIT.badInput, `${file} cannot be written: ${why}`);
  };
  const isThere = (path: string): boolean => statSync(path, { throwIfNoEntry: false }) !== undefined;
  if (!isThere(folder)) fail(`there is no folder ${folder}`);
  if (!statSync(folder).isDirectory()) fail(`${folder} is not a folder`);
  if (isThere(file) && statSync(file).isDirectory()) fail('it is a folder, not a file');
  try {
    accessSync(isThere(file) ? file : folder, constants.W_OK);
  } catch {
    fail('it may not be written');
  }
}
