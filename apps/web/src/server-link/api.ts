/** What the page asks of its server. Types come from the wire; nothing of it is in the page but their names. */
import type {
  ApprovalRow,
  ApproveAsk,
  CampaignHead,
  CampaignOpened,
  Comparison,
  DraftKept,
  LiveEvent,
  ServerError,
  SessionAnswer,
  UserRow,
  VersionHead,
  VersionWhole,
} from '@handrail/wire/api/api-types';

export class ApiFault extends Error {
  readonly status: number;
  readonly body: ServerError;

  constructor(status: number, body: ServerError) {
    super(body.advice === null ? body.message : `${body.message}; ${body.advice}`);
    this.status = status;
    this.body = body;
  }
}
/** The server cannot be reached: what is in hand stays in hand. */
export class OfflineFault extends Error {}

async function ask<T>(method: 'GET' | 'POST' | 'PUT' | 'PATCH' | 'DELETE', path: string, body?: unknown): Promise<T> {
  let answer: Response;
  try {
    answer = await fetch(path, {
      method,
      headers: { 'x-handrail': '1', ...(body === undefined ? {} : { 'content-type': 'application/json' }) },
      ...(body === undefined ? {} : { body: JSON.stringify(body) }),
      credentials: 'same-origin',
    });
  } catch {
    throw new OfflineFault('the server cannot be reached');
  }
  if (answer.status === 204) return undefined as T;
  const words: unknown = await answer.json().catch(() => null);
  if (!answer.ok) {
    const isError = typeof words === 'object' && words !== null && 'code' in words;
    const plain = {
      code: `http/${answer.status}`,
      message: `the server answered ${answer.status}`,
      advice: null,
      head: null,
    };
    throw new ApiFault(answer.status, isError ? (words as ServerError) : plain);
  }
  return words as T;
}

const campaign = (id: string): string => `/api/campaigns/${encodeURIComponent(id)}`;

export const api = {
  session: () => ask<SessionAnswer>('GET', '/api/session'),
  setup: (name: string, password: string, token: string) =>
    ask<SessionAnswer>('POST', '/api/setup', { name, password, token }),
  login: (name: string, password: string) => ask<SessionAnswer>('POST', '/api/login', { name, password }),
  logout: () => ask<void>('POST', '/api/logout', {}),
  users: () => ask<readonly UserRow[]>('GET', '/api/users'),
  addUser: (name: string, password: string, roles: readonly string[]) =>
    ask<UserRow>('POST', '/api/users', { name, password, roles }),
  changeUser: (
    id: string,
    change: { readonly roles?: readonly string[]; readonly isLocked?: boolean; readonly password?: string },
  ) => ask<UserRow>('PATCH', `/api/users/${encodeURIComponent(id)}`, change),
  campaigns: () => ask<readonly CampaignHead[]>('GET', '/api/campaigns'),
  addCampaign: (title: string, text: string) =>
    ask<CampaignOpened>('POST', '/api/campaigns', { title, text, timeline: null }),
  campaign: (id: string) => ask<CampaignOpened>('GET', campaign(id)),
  versions: (id: string) => ask<readonly VersionHead[]>('GET', `${campaign(id)}/versions`),
  version: (id: string, number: number) => ask<VersionWhole>('GET', `${campaign(id)}/versions/${number}`),
  save: (
    id: string,
    body: { readonly parent: number; readonly text: string; readonly timeline: unknown; readonly message: string },
  ) => ask<VersionWhole>('POST', `${campaign(id)}/versions`, body),
  compare: (id: string, from: number, to: number) =>
    ask<Comparison>('GET', `${campaign(id)}/compare?from=${from}&to=${to}`),
  approvals: (id: string) => ask<readonly ApprovalRow[]>('GET', `${campaign(id)}/approvals`),
  password: (old: string, password: string) => ask<void>('POST', '/api/password', { old, password }),
  restore: (id: string, number: number, parent: number) =>
    ask<VersionWhole>('POST', `${campaign(id)}/restore`, { number, parent, message: `Restored version ${number}` }),
  draft: (id: string) => ask<DraftKept | null>('GET', `${campaign(id)}/draft`),
  keepDraft: (id: string, draft: { readonly parent: number; readonly text: string; readonly timeline: unknown }) =>
    ask<void>('PUT', `${campaign(id)}/draft`, draft),
  dropDraft: (id: string) => ask<void>('DELETE', `${campaign(id)}/draft`),
  approve: (id: string, number: number, body: ApproveAsk) =>
    ask<void>('POST', `${campaign(id)}/versions/${number}/approval`, body),
  presence: (id: string, at: string) => ask<void>('POST', `${campaign(id)}/presence`, { at }),
  live: (id: string, onEvent: (event: LiveEvent) => void, onState: (isOpen: boolean) => void): (() => void) => {
    const source = new EventSource(`${campaign(id)}/live`);
    source.addEventListener('open', () => onState(true));
    source.addEventListener('error', () => onState(false));
    source.addEventListener('message', (message) => onEvent(JSON.parse(String(message.data)) as LiveEvent));
    return () => source.close();
  },
};
