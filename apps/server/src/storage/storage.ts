/** What the server keeps. One interface; the test-suite of it runs on every database that is offered. */
import type {
  ApprovalRow,
  AuditRow,
  DraftKept,
  LiveEvent,
  Role,
  VersionHead,
  VersionWhole,
} from '@handrail/wire/api/api-types';

export interface Campaign {
  readonly id: string;
  readonly title: string;
  readonly file: string;
  readonly textHash: string | null;
  readonly timelineHash: string | null;
  readonly head: VersionWhole;
}
export interface FileHashes {
  readonly textHash: string | null;
  readonly timelineHash: string | null;
}
export type NewVersion = Omit<VersionWhole, 'number' | 'parent' | 'hasTimeline'>;
export interface User {
  readonly id: string;
  readonly name: string;
  readonly roles: readonly Role[];
  readonly isLocked: boolean;
  readonly passwordHash: string;
}
export interface NumberedEvent {
  readonly event: number;
  readonly data: LiveEvent;
}

export interface CampaignStore {
  list(): Promise<readonly { readonly id: string; readonly title: string; readonly head: VersionHead }[]>;
  files(): Promise<readonly { readonly id: string; readonly file: string }[]>;
  /** null: there is none of this id. */
  open(id: string): Promise<Campaign | null>;
  /** @returns false when the id or the file is taken */
  add(campaign: { id: string; title: string; file: string }, first: NewVersion): Promise<boolean>;
  versions(id: string): Promise<readonly VersionHead[]>;
  version(id: string, number: number): Promise<VersionWhole | null>;
  /** Writes version and event in one transaction. @returns null when the parent is not the newest: nothing was written */
  save(id: string, parent: number, version: NewVersion): Promise<VersionWhole | null>;
  setTitle(id: string, title: string): Promise<void>;
  setFileHashes(id: string, hashes: FileHashes): Promise<void>;
  draft(id: string, user: string): Promise<DraftKept | null>;
  keepDraft(id: string, user: string, draft: DraftKept): Promise<void>;
  dropDraft(id: string, user: string): Promise<void>;
  approvals(id: string): Promise<readonly ApprovalRow[]>;
  /** Writes approval and event in one transaction. */
  approve(id: string, approval: ApprovalRow): Promise<void>;
  /** Events after the one of this number, in their order. */
  eventsAfter(id: string, event: number): Promise<readonly NumberedEvent[]>;
  /** Number of the last event; 0: none. */
  lastEvent(id: string): Promise<number>;
}

export interface AccountStore {
  users(): Promise<readonly User[]>;
  user(id: string): Promise<User | null>;
  userNamed(nameKey: string): Promise<User | null>;
  /** @returns false when the name is taken */
  addUser(user: User, nameKey: string): Promise<boolean>;
  changeUser(id: string, change: Partial<Pick<User, 'roles' | 'isLocked' | 'passwordHash'>>): Promise<void>;
  /** Makes the first account in one transaction. @returns false when there is one */
  addFirstUser(user: User, nameKey: string): Promise<boolean>;
  beginSession(tokenHash: string, user: string, nowUtcMs: number): Promise<void>;
  session(
    tokenHash: string,
  ): Promise<{ readonly user: string; readonly begunUtcMs: number; readonly usedUtcMs: number } | null>;
  useSession(tokenHash: string, nowUtcMs: number): Promise<void>;
  endSession(tokenHash: string): Promise<void>;
  /** @param but this one is kept */
  endSessionsOf(user: string, but?: string): Promise<void>;
  endSessionsBefore(begunUtcMs: number, usedUtcMs: number): Promise<void>;
  failedLogins(nameKey: string): Promise<{ readonly tries: number; readonly lastUtcMs: number }>;
  countFailedLogin(nameKey: string, nowUtcMs: number, forgetBeforeUtcMs: number): Promise<void>;
  forgetFailedLogins(nameKey: string): Promise<void>;
}

export interface AuditStore {
  write(row: Omit<AuditRow, 'id'>): Promise<void>;
  /** Newest first. */
  list(before: number | undefined, most: number): Promise<readonly AuditRow[]>;
}

export interface Storage {
  readonly campaigns: CampaignStore;
  readonly accounts: AccountStore;
  readonly audit: AuditStore;
  /** Asks the database something; rejects when it does not answer. @returns version of the schema */
  check(): Promise<number>;
  close(): Promise<void>;
}
