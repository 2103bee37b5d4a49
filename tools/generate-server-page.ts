/** Writes docs/reference/server.md: every address of the server with who may ask, and everything that it refuses. `--check` writes nothing. */
import { existsSync, readFileSync, writeFileSync } from 'node:fs';
import { dirname, join } from 'node:path';
import { fileURLToPath } from 'node:url';
import { API_ERRORS } from '@handrail/wire/api/api-errors';
import { API_ROUTES, type ApiRoute, MAY } from '@handrail/wire/api/api-routes';
import { ROLES } from '@handrail/wire/api/api-schemas';

const FILE = join(dirname(fileURLToPath(import.meta.url)), '..', 'docs', 'reference', 'server.md');

const routes: readonly ApiRoute[] = Object.values(API_ROUTES as Readonly<Record<string, ApiRoute>>);
const mark = (route: ApiRoute, who: string): string => {
  const may = MAY[route.access];
  if (may === 'anyone') return 'yes';
  if (who === 'nobody') return '–';
  return may === 'signed-in' || (may as readonly string[]).includes(who) ? 'yes' : '–';
};
const text = `${[
  '# Addresses of the server',
  '',
  'Made from the list that the server itself is made from. Each line is asked by everybody in the tests. The same as OpenAPI stands at',
  '`/api/openapi.json` of a running server. A request that writes carries the header `x-handrail: 1`.',
  '',
  `| method | address | what it does | nobody | ${ROLES.join(' | ')} |`,
  `|---|---|---|---|${ROLES.map(() => '---|').join('')}`,
  ...routes.map(
    (route) =>
      `| ${route.method} | \`${route.path}\` | ${route.does} | ${['nobody', ...ROLES].map((who) => mark(route, who)).join(' | ')} |`,
  ),
  '',
  '## What it refuses',
  '',
  '| code | status | what to do |',
  '|---|---|---|',
  ...Object.entries(API_ERRORS).map(([code, [status, advice]]) => `| \`${code}\` | ${status} | ${advice} |`),
].join('\n')}\n`;

if (process.argv.includes('--check')) {
  if (!existsSync(FILE) || readFileSync(FILE, 'utf8') !== text) {
    console.error(`${FILE} is out of date: npx tsx tools/generate.ts`);
    process.exitCode = 1;
  }
} else if (!existsSync(FILE) || readFileSync(FILE, 'utf8') !== text) {
  writeFileSync(FILE, text);
  console.log('wrote docs/reference/server.md');
}
