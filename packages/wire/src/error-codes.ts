/** Every fault that reading a file or a message from outside can end in, with what to do about it. */
export const WIRE_CODES = {
  'wire/not-json':
    'The file is not JSON. Campaign text is read as it is; JSON comes from "handrail export" or another program.',
  'wire/wrong-format': 'The JSON is of another format. Every file of ours says its format and its version first.',
  'wire/newer-version':
    'The file was written for a newer program. Reading it halfway could drop what matters, so it is not read at all.',
  'wire/no-migration': 'The file says a version that never was, or one that nobody can bring up to date.',
  'wire/wrong-shape':
    'A part of the file is missing, unknown or of the wrong sort; the message says where. The schema is published.',
  'wire/broken-text': 'Campaign text with a syntax error has no JSON. Mend the text first.',
} as const;
