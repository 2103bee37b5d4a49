/** Tens of thousands of requests that nobody should send: they are refused, the server stands, and what was kept is still there. */
import { API_ROUTES, type ApiRoute } from '@handrail/wire/api/api-routes';
import * as fc from 'fast-check';
import { afterAll, beforeAll, expect, test } from 'vitest';
import { ROLES, type Served, served } from './served.ts';

const REQUESTS = Number(process.env['HANDRAIL_FUZZ'] ?? 12_000);
let here: Served;
beforeAll(async () => {
  here = await served();
});
afterAll(() => here?.end());

const routes: readonly ApiRoute[] = Object.values(API_ROUTES as Readonly<Record<string, ApiRoute>>);
const words = fc.oneof(
  fc.string({ maxLength: 80 }),
  fc.string({ unit: 'binary', maxLength: 60 }),
  fc.constantFrom(
    'first',
    '1',
    '0',
    '-1',
    '1e999',
    'NaN',
    '../../etc/passwd',
    '%2e%2e%2f',
    '..%5c',
    '\u0000',
    'a'.repeat(5000),
    '💥',
    "' or 1=1 --",
    '__proto__',
    '{{7*7}}',
    'null',
    '1.5',
    '99999999999999999999',
  ),
);
const value: fc.Arbitrary<unknown> = fc.oneof(
  words,
  fc.integer(),
  fc.double(),
  fc.boolean(),
  fc.constant(null),
  fc.array(fc.oneof(words, fc.integer()), { maxLength: 5 }),
  fc.jsonValue({ maxDepth: 4 }),
);
const NAMES = [
  'name',
  'password',
  'token',
  'old',
  'roles',
  'isLocked',
  'title',
  'text',
  'timeline',
  'message',
  'parent',
  'number',
  'decision',
  'note',
  'at',
  '__proto__',
  'constructor',
];
const body = fc.oneof(
  fc.dictionary(fc.constantFrom(...NAMES), value, { maxKeys: 6 }).map((one) => JSON.stringify(one)),
  value.map((one) => JSON.stringify(one) ?? ''),
  words,
  fc.constantFrom(
    '',
    '{',
    '[1,',
    '{"a":',
    '"\\ud800"',
    `${'['.repeat(3000)}${']'.repeat(3000)}`,
    `{"text":"${'x'.repeat(200_000)}"}`,
  ),
);
const sort = fc.constantFrom(
  'application/json',
  'text/plain',
  'application/xml',
  'model/gltf-binary',
  'application/json; charset=utf-16',
  'multipart/form-data',
);
const asked = fc.record({
  route: fc.constantFrom(...routes.filter(({ path }) => !path.endsWith('/live'))),
  method: fc.option(fc.constantFrom('GET', 'POST', 'PUT', 'PATCH', 'DELETE', 'OPTIONS', 'HEAD'), {
    nil: null,
    freq: 6,
  }),
  parts: fc.array(words, { minLength: 3, maxLength: 3 }),
  query: fc.dictionary(fc.constantFrom('from', 'to', 'before', 'x', '__proto__'), words, { maxKeys: 3 }),
  body,
  sort,
  who: fc.constantFrom('nobody', 'none', ...ROLES),
  cookie: fc.option(words, { nil: null, freq: 8 }),
  isReal: fc.boolean(),
});

test(`${REQUESTS} spoilt requests give no fault of the program`, async () => {
  const seen = new Map<number, number>();
  const before = await here.ask('GET', '/api/campaigns/first-campaign/versions', { as: 'viewer' });
  const list = await here.ask('GET', '/api/campaigns', { as: 'viewer' });
  const [{ id: real } = { id: 'first' }] = list.body as readonly { readonly id: string }[];
  for (const one of fc.sample(asked, { numRuns: REQUESTS, seed: 20260 })) {
    const parts = [...one.parts];
    const path = one.route.path.replaceAll(/:[a-z]+/g, (name) =>
      one.isReal && name === ':id' ? real : encodeURIComponent((parts.pop() ?? 'x').replaceAll(/\p{Cs}/gu, '?')),
    );
    const method = one.method ?? one.route.method;
    // Signing out would end the session that the rest is asked with; a changed account would lock the others out.
    if (path.startsWith('/api/logout') || path.startsWith('/api/users/')) continue;
    const url = `${path}?${new URLSearchParams(Object.entries(one.query).map(([name, word]) => [name, word.replaceAll(/\p{Cs}/gu, '?')]))}`;
    const answer = await here.server.app.inject({
      method: method as 'GET',
      url,
      headers: {
        'x-handrail': '1',
        host: new URL(here.server.address).host,
        cookie:
          one.cookie === null
            ? (here.cookies[one.who] ?? '')
            : `handrail=${encodeURIComponent(one.cookie.replaceAll(/\p{Cs}/gu, '?'))}`,
        ...(method === 'GET' || method === 'HEAD' ? {} : { 'content-type': one.sort }),
      },
      ...(method === 'GET' || method === 'HEAD' ? {} : { payload: one.body }),
    });
    seen.set(answer.statusCode, (seen.get(answer.statusCode) ?? 0) + 1);
    if (answer.statusCode >= 500)
      expect([method, url.slice(0, 200), one.body.slice(0, 200), answer.body]).toEqual('an answer below 500');
  }
  expect([...seen.keys()].filter((status) => status >= 400).length).toBeGreaterThan(3);
  expect((await here.ask('GET', '/api/health')).status).toBe(200);
  expect((await here.ask('GET', '/api/campaigns/first-campaign/versions', { as: 'viewer' })).status).toBe(
    before.status,
  );
}, 600_000);
