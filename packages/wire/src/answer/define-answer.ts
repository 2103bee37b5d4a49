/**
 * The answer of a command as `--json` prints it: one envelope, one schema per command. A definition is one file of answers/,
 * found through the generated registry; its JSON Schema is published under docs/schemas.
 */
import { z } from 'zod';

export const ANSWER_FORMAT = 'handrail-answer';
export const ANSWER_VERSION = 1;

/** What the process says to a script besides; see docs/reference/answers.md. */
export const exitCode = z
  .union([z.literal(0), z.literal(1), z.literal(2), z.literal(3), z.literal(4), z.literal(70)])
  .describe(
    '0 fine, 1 findings at error level, 2 bad input, 3 no plan exists, 4 cannot tell because something is not stated, 70 Handrail itself failed',
  );

const envelope = <C extends string>(command: C) => ({
  format: z.literal(ANSWER_FORMAT),
  version: z.literal(ANSWER_VERSION),
  command: z.literal(command),
  exitCode,
});

/**
 * @param command as it is typed
 * @param about one sentence: what the answer tells
 * @param body what stands in it beside the envelope
 */
export function defineAnswer<C extends string, B extends z.ZodRawShape>(command: C, about: string, body: B) {
  return { command, about, schema: z.strictObject({ ...envelope(command), ...body }) };
}

type DeepReadonly<T> = T extends object ? { readonly [K in keyof T]: DeepReadonly<T[K]> } : T;

/** The whole answer, envelope included. */
export type AnswerOf<D extends { readonly schema: z.ZodType }> = DeepReadonly<z.infer<D['schema']>>;
/** What a command has to supply; the envelope is added when it is printed. */
export type AnswerBody<D extends { readonly schema: z.ZodType }> = Omit<
  AnswerOf<D>,
  'format' | 'version' | 'command' | 'exitCode'
>;

/** Draft 2020-12. */
export function answerJsonSchema(definition: {
  readonly command: string;
  readonly about: string;
  readonly schema: z.ZodType;
}): Readonly<Record<string, unknown>> {
  return {
    title: `Answer of handrail ${definition.command}`,
    description: definition.about,
    ...z.toJSONSchema(definition.schema, { target: 'draft-2020-12' }),
  };
}
