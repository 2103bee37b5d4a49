import type { ServerOptions } from '../server-options.ts';

/** With TLS in front the browser itself holds the cookie to this host, to TLS and to the whole site. */
export const cookieName = ({ publicAddress }: Pick<ServerOptions, 'publicAddress'>): string =>
  publicAddress === null ? 'handrail' : '__Host-handrail';
