/**
 * Proofs on disk: for each EVA one line of JSON with the model that was solved, then the lines of the log, until the next such
 * line. The model stands in the file, so that it can be checked by whoever has the checker alone.
 */
import { closeSync, openSync, writeSync } from 'node:fs';
import type { Model } from '@handrail/solver/model/model';
import { KeptLines } from '@handrail/solver/proof/kept-lines';
import { EXIT } from '../exit-code.ts';
import { ExitError } from '../exit-error.ts';
import { readBytes } from '../load-campaign.ts';
import type { KeptProof } from '@handrail/eva/schedule/proof-shelf';

const FORMAT = 'handrail-proofs';
const VERSION = 1;

const BRACE = 123;
const LINE_END = 10;
/** Bytes of a log that are kept as one piece when it is read, and the line in which they end. */
const PIECE = 1 << 16;

/** @throws ExitError with code 2 when the file cannot be written. */
export function writeProofs(file: string, proofs: readonly KeptProof[]): void {
  try {
    const handle = openSync(file, 'w');
    for (const { eva, model, lines } of proofs) {
      writeSync(handle, `${JSON.stringify({ format: FORMAT, version: VERSION, eva, model })}\n`);
      for (const piece of lines.pieces()) writeSync(handle, piece);
    }
    closeSync(handle);
  } catch (cause) {
    throw new ExitError(
      EXIT.badInput,
      `${file} cannot be written: ${(cause as NodeJS.ErrnoException).code ?? String(cause)}`,
    );
  }
}

/** @throws ExitError with code 2: not such a file, or a newer one. */
export function readProofs(file: string): readonly KeptProof[] {
  const proofs: KeptProof[] = [];
  const bytes = readBytes(file);
  for (let at = 0; at < bytes.length; ) {
    const end = lineEnd(bytes, at);
    if (bytes[at] === BRACE) {
      const head = headOf(file, new TextDecoder().decode(bytes.subarray(at, end)));
      proofs.push({ ...head, lines: new KeptLines() });
      at = end + 1;
      continue;
    }
    const proof = proofs.at(-1);
    if (proof === undefined) throw notProofs(file, 'its first line is not a model');
    const from = at;
    let lines = 0;
    for (; at < bytes.length && at - from < PIECE && bytes[at] !== BRACE; lines++) at = lineEnd(bytes, at) + 1;
    proof.lines.write(bytes.subarray(from, at), lines);
  }
  if (proofs.length === 0) throw notProofs(file, 'there is no proof in it');
  return proofs;
}

/** Where the line that begins at `from` ends; the end of the file if it has no line end. */
function lineEnd(bytes: Uint8Array, from: number): number {
  const end = bytes.indexOf(LINE_END, from);
  return end < 0 ? bytes.length : end;
}

function headOf(file: string, line: string): { eva: string; model: Model } {
  let head: { format?: unknown; version?: unknown; eva?: unknown; model?: Model };
  try {
    head = JSON.parse(line) as typeof head;
  } catch {
    throw notProofs(file, 'a line begins like JSON and is not');
  }
  if (head.format !== FORMAT) throw notProofs(file, `format is ${JSON.stringify(head.format)}`);
  if (head.version !== VERSION)
    throw notProofs(file, `version ${JSON.stringify(head.version)}; this program reads ${VERSION}`);
  const { eva, model } = head;
  const parts = [model?.variables, model?.intervals, model?.constraints, model?.objectives];
  if (typeof eva !== 'string' || model === undefined || !parts.every(Array.isArray))
    throw notProofs(file, 'a model is incomplete');
  return { eva, model };
}

function notProofs(file: string, why: string): ExitError {
  return new ExitError(EXIT.badInput, `${file} is not what "handrail plan --proof" writes: ${why}`);
}
