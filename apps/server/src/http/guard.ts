/** What is looked at before any route: is the request meant for this server, does a write come from its page, may the person. */
import { MAY, type Access } from '@handrail/wire/api/api-routes';
import { ROLES } from '@handrail/wire/api/api-schemas';
import type { FastifyRequest } from 'fastify';
import { timingSafeEqual } from 'node:crypto';
import { tokenHash, userOfSession } from '../accounts/sessions.ts';
import { ServerFault } from '../server-fault.ts';
import { isLoopback } from '../server-options.ts';
import type { Person, Serving } from '../serving.ts';
import { cookieName } from './session-cookie.ts';

const NOBODY: Person = { id: '', name: '', roles: [] };

/** A page elsewhere can make a browser ask under a name of its own that leads here; such a name is not answered. */
export function mustBeOurHost({ options }: Serving, request: FastifyRequest): void {
  const host = hostOf(`http://${request.headers.host ?? ''}`);
  const ours = options.publicAddress === null ? null : hostOf(options.publicAddress);
  if (host === null || (host.host !== ours?.host && !isLoopback(host.hostname))) {
    throw new ServerFault(
      'request/wrong-host',
      `this server does not go by the name ${request.headers.host ?? '(none)'}`,
    );
  }
}

/** A form on a foreign page cannot set a header of its own, nor say another origin than its own. */
export function mustComeFromOurPage({ options }: Serving, request: FastifyRequest): void {
  if (request.method === 'GET' || request.method === 'HEAD') return;
  const refused = (why: string): ServerFault => new ServerFault('request/not-from-this-page', why);
  if (request.headers['x-handrail'] !== '1') throw refused('the header x-handrail is missing');
  const site = request.headers['sec-fetch-site'];
  if (site !== undefined && site !== 'same-origin' && site !== 'none') throw refused(`the request comes from ${site}`);
  const { origin } = request.headers;
  const ours =
    options.publicAddress === null ? `http://${request.headers.host ?? ''}` : new URL(options.publicAddress).origin;
  if (origin !== undefined && origin !== ours) throw refused(`the request comes from ${origin}`);
}

export async function whoAsks({ options, storage }: Serving, request: FastifyRequest): Promise<Person> {
  if (options.mode === 'open') return { id: 'local', name: options.localUser, roles: ROLES };
  return (await userOfSession(storage.accounts, request.cookies[cookieName(options)])) ?? NOBODY;
}

export function mustBeAllowed(access: Access, who: Person): void {
  const may = MAY[access];
  if (may === 'anyone') return;
  if (who.id === '') throw new ServerFault('session/not-signed-in', 'nobody is signed in');
  if (may === 'signed-in' || may.some((role) => who.roles.includes(role))) return;
  throw new ServerFault(
    'session/not-allowed',
    `this takes the role ${may.join(' or ')}; you have ${who.roles.join(', ') || 'none'}`,
  );
}

export function hasMetricsToken({ options }: Serving, request: FastifyRequest): boolean {
  const given = /^Bearer (.{1,500})$/.exec(request.headers.authorization ?? '')?.[1];
  if (given === undefined || options.metricsToken === null) return false;
  return timingSafeEqual(Buffer.from(tokenHash(given)), Buffer.from(tokenHash(options.metricsToken)));
}

function hostOf(address: string): URL | null {
  try {
    return new URL(address);
  } catch {
    return null;
  }
}
