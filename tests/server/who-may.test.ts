/** Every route asked by everybody: nobody, an account without roles, and one for each role. A route that is added is asked too. */
import { API_ROUTES, type ApiRoute, MAY } from '@handrail/wire/api/api-routes';
import { afterAll, beforeAll, describe, expect, test } from 'vitest';
import { ROLES, type Served, served } from './served.ts';

let here: Served;
beforeAll(async () => {
  here = await served();
});
afterAll(() => here?.end());

/** The matrix as people read it in docs/server.md; written out here, so that a change of the code alone is noticed. */
const EXPECTED: Readonly<Record<ApiRoute['access'], readonly string[]>> = {
  anyone: ['nobody', 'none', ...ROLES],
  'signed-in': ['none', ...ROLES],
  read: ['viewer', 'planner', 'approver', 'console'],
  write: ['planner'],
  approve: ['approver'],
  administer: ['administrator'],
};
const ids = { ':id': '1c-none', ':number': '1', ':name': 'none.glb' };

describe.each(Object.entries(API_ROUTES as Readonly<Record<string, ApiRoute>>))('%s', (id, route) => {
  test.each(['nobody', 'none', ...ROLES])(`asked by %s`, async (who) => {
    // Asked in a way that can do nothing: names of what is not there, and no body where one is needed.
    const path = Object.entries(ids).reduce((so, [name, value]) => so.replace(name, value), route.path);
    if (id === 'signOut' || id === 'followCampaign') return expectRefusalOnly(route, path, who);
    const { status, body } = await here.ask(route.method, path, { as: who });
    const code = (body as { code?: string } | null)?.code;
    if (EXPECTED[route.access].includes(who)) expect([status, code]).not.toContain('session/not-allowed');
    if (EXPECTED[route.access].includes(who)) expect(code).not.toBe('session/not-signed-in');
    else
      expect([status, code]).toEqual(who === 'nobody' ? [401, 'session/not-signed-in'] : [403, 'session/not-allowed']);
    expect(status).toBeLessThan(500);
  });

  test('is listed for those roles', () => {
    const may = MAY[route.access];
    const roles = typeof may === 'string' ? may : [...may];
    expect(roles).toEqual(
      route.access === 'anyone' ? 'anyone' : route.access === 'signed-in' ? 'signed-in' : EXPECTED[route.access],
    );
  });
});

/** Ending a session or following a campaign does something even so: only who must be refused asks. */
async function expectRefusalOnly(route: ApiRoute, path: string, who: string): Promise<void> {
  if (EXPECTED[route.access].includes(who)) return;
  const { status } = await here.ask(route.method, path, { as: who });
  expect(status).toBe(who === 'nobody' ? 401 : 403);
}

describe('a request that writes', () => {
  test('without the header of the page is refused, whoever asks', async () => {
    const { status, body } = await here.ask('POST', '/api/campaigns', {
      as: 'planner',
      body: {},
      headers: { 'x-handrail': '' },
    });
    expect([status, (body as { code: string }).code]).toEqual([403, 'request/not-from-this-page']);
  });
  test('from a page of another origin is refused', async () => {
    const { status, body } = await here.ask('POST', '/api/campaigns', {
      as: 'planner',
      body: {},
      headers: { origin: 'https://elsewhere.example' },
    });
    expect([status, (body as { code: string }).code]).toEqual([403, 'request/not-from-this-page']);
  });
});
