import { z } from 'zod';
import { counts, finding, id } from '../answer/answer-parts.ts';
import { defineAnswer } from '../answer/define-answer.ts';

export const check = defineAnswer('check', 'What an independent replay and the rules find in a timeline.', {
  campaign: id,
  documentHash: z.string(),
  timeline: z.string().nullable().describe('the file that was checked; null: none, so no plan was checked'),
  verdict: z.string().describe('one sentence'),
  counts,
  findings: z.array(finding),
});
