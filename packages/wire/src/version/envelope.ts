/** What every file of ours says first: which format it is, and which version of it. */
import { Fault } from '@handrail/quantity/fault';
import { z } from 'zod';

const envelope = z.looseObject({ format: z.string(), version: z.int().min(0) });

/**
 * @throws Fault `wire/not-json` when the text is not JSON, `wire/wrong-format` when it is of another format
 */
export function readEnvelope(
  text: string,
  format: string,
): { readonly version: number; readonly data: Readonly<Record<string, unknown>> } {
  let data: unknown;
  try {
    data = JSON.parse(text);
  } catch (cause) {
    throw new Fault('wire/not-json', `this is not JSON: ${(cause as Error).message}`, { cause });
  }
  const read = envelope.safeParse(data);
  if (!read.success || read.data.format !== format) {
    throw new Fault('wire/wrong-format', `this is not a ${format} file`, {
      values: { format: read.success ? read.data.format : null },
      advice: `a ${format} file begins with {"format": "${format}", "version": …}`,
    });
  }
  return { version: read.data.version, data: read.data };
}
