/** What page and server say to each other, as types: read off the schemas that the server checks by, so that the page needs no schema of its own. */
import type { z } from 'zod';
import type * as schemas from './api-schemas.ts';

export type Role = z.infer<typeof schemas.role>;
export type ServerError = z.infer<typeof schemas.serverError>;
export type SessionAnswer = z.infer<typeof schemas.sessionAnswer>;
export type UserRow = z.infer<typeof schemas.userRow>;
export type CampaignHead = z.infer<typeof schemas.campaignHead>;
export type CampaignOpened = z.infer<typeof schemas.campaignOpened>;
export type VersionHead = z.infer<typeof schemas.versionHead>;
export type VersionWhole = z.infer<typeof schemas.versionWhole>;
export type DraftKept = z.infer<typeof schemas.draftKept>;
export type ApproveAsk = z.infer<typeof schemas.approveAsk>;
export type ApprovalRow = z.infer<typeof schemas.approvalRow>;
export type Comparison = z.infer<typeof schemas.comparison>;
export type AuditRow = z.infer<typeof schemas.auditRow>;
export type LiveEvent = z.infer<typeof schemas.liveEvent>;
