/**
 * Every route of the server: method, path, who may, what is asked and answered. Server, published OpenAPI, matrix of roles and
 * tests are made from this list, so that none of them can forget a route.
 */
import { z } from 'zod';
import type { Role } from './api-types.ts';
import * as schema from './api-schemas.ts';

/** Who may ask. `anyone` needs no account; `signed-in` any account, whatever its roles. */
export type Access = 'anyone' | 'signed-in' | 'read' | 'write' | 'approve' | 'administer';
export const MAY: Readonly<Record<Access, 'anyone' | 'signed-in' | readonly Role[]>> = {
  anyone: 'anyone',
  'signed-in': 'signed-in',
  read: ['viewer', 'planner', 'approver', 'console'],
  write: ['planner'],
  approve: ['approver'],
  administer: ['administrator'],
};

export interface ApiRoute {
  readonly method: 'GET' | 'POST' | 'PUT' | 'PATCH' | 'DELETE';
  /** Parameters as `:name`. */
  readonly path: string;
  readonly access: Access;
  readonly does: string;
  readonly params?: z.ZodType;
  readonly query?: z.ZodType;
  readonly body?: z.ZodType | 'model/gltf-binary';
  /** 204 answers nothing; a media type in place of a schema is answered as it is. */
  readonly answers:
    | readonly [status: 200 | 201, schema: z.ZodType | 'text/event-stream' | 'model/gltf-binary' | 'text/plain']
    | 204;
}

const ofCampaign = z.object({ id: schema.campaignId });
const ofVersion = z.object({ id: schema.campaignId, number: schema.versionNumber });
const ofModel = z.object({ id: schema.campaignId, name: schema.modelName });

export const API_ROUTES = {
  readSession: {
    method: 'GET',
    path: '/api/session',
    access: 'anyone',
    does: 'Who is signed in, and what sort of server this is.',
    answers: [200, schema.sessionAnswer],
  },
  setUp: {
    method: 'POST',
    path: '/api/setup',
    access: 'anyone',
    does: 'Makes the first account, once, with the token printed on the terminal.',
    body: schema.setupAsk,
    answers: [200, schema.sessionAnswer],
  },
  signIn: {
    method: 'POST',
    path: '/api/login',
    access: 'anyone',
    does: 'Begins a session.',
    body: schema.loginAsk,
    answers: [200, schema.sessionAnswer],
  },
  signOut: { method: 'POST', path: '/api/logout', access: 'signed-in', does: 'Ends the session.', answers: 204 },
  changePassword: {
    method: 'POST',
    path: '/api/password',
    access: 'signed-in',
    does: 'Changes the own password and ends all other sessions.',
    body: schema.passwordAsk,
    answers: 204,
  },
  listUsers: {
    method: 'GET',
    path: '/api/users',
    access: 'administer',
    does: 'All accounts.',
    answers: [200, z.array(schema.userRow)],
  },
  addUser: {
    method: 'POST',
    path: '/api/users',
    access: 'administer',
    does: 'Makes an account.',
    body: schema.userAsk,
    answers: [201, schema.userRow],
  },
  changeUser: {
    method: 'PATCH',
    path: '/api/users/:id',
    access: 'administer',
    does: 'Gives roles, locks, sets a new password; ends sessions of a locked account.',
    params: z.object({ id: schema.userId }),
    body: schema.userChange,
    answers: [200, schema.userRow],
  },
  listCampaigns: {
    method: 'GET',
    path: '/api/campaigns',
    access: 'read',
    does: 'All campaigns with their newest version.',
    answers: [200, z.array(schema.campaignHead)],
  },
  addCampaign: {
    method: 'POST',
    path: '/api/campaigns',
    access: 'write',
    does: 'A new campaign; its text is version 1.',
    body: schema.campaignAsk,
    answers: [201, schema.campaignOpened],
  },
  openCampaign: {
    method: 'GET',
    path: '/api/campaigns/:id',
    access: 'read',
    does: 'A campaign with its newest version in whole.',
    params: ofCampaign,
    answers: [200, schema.campaignOpened],
  },
  listVersions: {
    method: 'GET',
    path: '/api/campaigns/:id/versions',
    access: 'read',
    does: 'All versions, newest first.',
    params: ofCampaign,
    answers: [200, z.array(schema.versionHead)],
  },
  openVersion: {
    method: 'GET',
    path: '/api/campaigns/:id/versions/:number',
    access: 'read',
    does: 'A version in whole.',
    params: ofVersion,
    answers: [200, schema.versionWhole],
  },
  saveVersion: {
    method: 'POST',
    path: '/api/campaigns/:id/versions',
    access: 'write',
    does: 'A new version on top of the newest; refused where another is the newest.',
    params: ofCampaign,
    body: schema.versionAsk,
    answers: [201, schema.versionWhole],
  },
  restoreVersion: {
    method: 'POST',
    path: '/api/campaigns/:id/restore',
    access: 'write',
    does: 'A new version that is equal to an old one.',
    params: ofCampaign,
    body: schema.restoreAsk,
    answers: [201, schema.versionWhole],
  },
  compareVersions: {
    method: 'GET',
    path: '/api/campaigns/:id/compare',
    access: 'read',
    does: 'What changed in the text between any two versions.',
    params: ofCampaign,
    query: schema.compareQuery,
    answers: [200, schema.comparison],
  },
  openDraft: {
    method: 'GET',
    path: '/api/campaigns/:id/draft',
    access: 'write',
    does: 'What the person last had in hand; null: nothing.',
    params: ofCampaign,
    answers: [200, schema.draftKept.nullable()],
  },
  keepDraft: {
    method: 'PUT',
    path: '/api/campaigns/:id/draft',
    access: 'write',
    does: 'Puts by what the person has in hand.',
    params: ofCampaign,
    body: schema.draftAsk,
    answers: 204,
  },
  dropDraft: {
    method: 'DELETE',
    path: '/api/campaigns/:id/draft',
    access: 'write',
    does: 'Forgets what was put by.',
    params: ofCampaign,
    answers: 204,
  },
  listApprovals: {
    method: 'GET',
    path: '/api/campaigns/:id/approvals',
    access: 'read',
    does: 'Who agreed to which version, or did not, newest first.',
    params: ofCampaign,
    answers: [200, z.array(schema.approvalRow)],
  },
  approveVersion: {
    method: 'POST',
    path: '/api/campaigns/:id/versions/:number/approval',
    access: 'approve',
    does: 'Says agreed or not agreed to a version; kept for good.',
    params: ofVersion,
    body: schema.approveAsk,
    answers: 204,
  },
  followCampaign: {
    method: 'GET',
    path: '/api/campaigns/:id/live',
    access: 'read',
    does: 'Events as they happen; goes on after Last-Event-ID.',
    params: ofCampaign,
    answers: [200, 'text/event-stream'],
  },
  showPresence: {
    method: 'POST',
    path: '/api/campaigns/:id/presence',
    access: 'read',
    does: 'Says where in the campaign the person is looking.',
    params: ofCampaign,
    body: schema.presenceAsk,
    answers: 204,
  },
  openModel: {
    method: 'GET',
    path: '/api/campaigns/:id/models/:name',
    access: 'read',
    does: 'The drawing of a body.',
    params: ofModel,
    answers: [200, 'model/gltf-binary'],
  },
  keepModel: {
    method: 'PUT',
    path: '/api/campaigns/:id/models/:name',
    access: 'write',
    does: 'Keeps the drawing of a body beside the campaign.',
    params: ofModel,
    body: 'model/gltf-binary',
    answers: 204,
  },
  listAudit: {
    method: 'GET',
    path: '/api/audit',
    access: 'administer',
    does: 'Who did what, newest first, 200 at a time.',
    query: schema.auditQuery,
    answers: [200, z.array(schema.auditRow)],
  },
  readHealth: {
    method: 'GET',
    path: '/api/health',
    access: 'anyone',
    does: 'Whether the server and its store answer.',
    answers: [200, schema.health],
  },
  readMetrics: {
    method: 'GET',
    path: '/metrics',
    access: 'administer',
    does: 'Figures for a monitor; also with "Authorization: Bearer" and the token of HANDRAIL_METRICS_TOKEN.',
    answers: [200, 'text/plain'],
  },
  readOpenApi: {
    method: 'GET',
    path: '/api/openapi.json',
    access: 'anyone',
    does: 'This list, for programs.',
    answers: [200, z.record(z.string(), z.unknown())],
  },
} as const satisfies Readonly<Record<string, ApiRoute>>;

export type ApiRouteId = keyof typeof API_ROUTES;
