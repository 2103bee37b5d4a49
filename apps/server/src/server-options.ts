/** What a server is started with. */
export interface ServerOptions {
  /** accounts: a folder of campaigns for many people. open: one file for the person at this machine. */
  readonly mode: 'accounts' | 'open';
  /** Folder of the campaign files. */
  readonly folder: string;
  /** Name of the one file in the folder that is open; null in a folder of many. */
  readonly file: string | null;
  /** 127.0.0.1 unless told otherwise. */
  readonly host: string;
  /** 0: any free one. */
  readonly port: number;
  /** https://… as people type it, where a proxy with TLS stands in front; null: this machine alone. */
  readonly publicAddress: string | null;
  /** PostgreSQL; null: SQLite in the folder. */
  readonly databaseUrl: string | null;
  /** Folder of the built page; null: the answers alone are served. */
  readonly page: string | null;
  readonly metricsToken: string | null;
  /** Requests in a minute from one address, and tries to sign in. */
  readonly perMinute: { readonly requests: number; readonly logins: number };
  /** Name of the one person in open mode. */
  readonly localUser: string;
}

export const PROGRAM_VERSION = '0.1.0';
const LOOPBACK = new Set(['127.0.0.1', '::1', 'localhost']);
export const isLoopback = (host: string): boolean => LOOPBACK.has(host.replace(/^\[|\]$/g, ''));

/** @returns why the server must not be started so; null: it may */
export function refusalOf({ mode, host, publicAddress }: ServerOptions): string | null {
  if (mode === 'open' && (!isLoopback(host) || publicAddress !== null)) {
    return `one file is opened without accounts, so only on this machine, not on ${host}: use "handrail serve FOLDER" for several people`;
  }
  if (publicAddress !== null && !/^https:\/\/[^/?#@]+\/?$/.test(publicAddress)) {
    return `--public-address is an https address without a path, such as https://plan.example.org, not ${publicAddress}`;
  }
  if (!isLoopback(host) && publicAddress === null) {
    return `on ${host} passwords would cross the network in the clear: put a proxy with TLS in front and say --public-address https://… as people type it`;
  }
  return null;
}
