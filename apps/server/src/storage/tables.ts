/** Tables as they are after all migrations. Instants are UTC milliseconds; JSON is kept as text and read in one place. */
import type { Generated } from 'kysely';

export interface Tables {
  readonly campaigns: {
    id: string;
    title: string;
    /** Number of the newest version. */
    head: number;
    /** Number of the last event of the campaign; counts up in the transaction that writes the event. */
    event: number;
    /** Name of the file that it is mirrored to. */
    file: string;
    /** SHA-256 of what the files beside held when we last wrote or read them; null: there was none. */
    text_hash: string | null;
    timeline_hash: string | null;
  };
  readonly versions: {
    campaign: string;
    number: number;
    parent: number | null;
    author: string;
    at_utc_ms: number;
    message: string;
    text: string;
    timeline: string | null;
    level: number | null;
    errors: number;
  };
  readonly drafts: {
    campaign: string;
    user_id: string;
    parent: number;
    text: string;
    timeline: string | null;
    at_utc_ms: number;
  };
  readonly approvals: {
    id: Generated<number>;
    campaign: string;
    number: number;
    by: string;
    decision: string;
    note: string;
    at_utc_ms: number;
  };
  readonly events: { campaign: string; event: number; data: string };
  readonly users: {
    id: string;
    name: string;
    /** The name without difference of case or form; unique. */
    name_key: string;
    password_hash: string;
    roles: string;
    is_locked: number;
  };
  readonly sessions: {
    /** SHA-256 of the token: whoever reads the store cannot use it to sign in. */
    token_hash: string;
    user_id: string;
    begun_utc_ms: number;
    used_utc_ms: number;
  };
  readonly failed_logins: { name_key: string; tries: number; last_utc_ms: number };
  readonly audit: { id: Generated<number>; at_utc_ms: number; by: string; what: string; of: string };
}
