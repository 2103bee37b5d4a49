/** The built page, and what the browser is told that it may do. */
import { createHash } from 'node:crypto';
import { existsSync, readFileSync } from 'node:fs';
import { join } from 'node:path';
import helmet from '@fastify/helmet';
import fastifyStatic from '@fastify/static';
import type { FastifyInstance } from 'fastify';
import type { ServerOptions } from '../server-options.ts';

export async function tellTheBrowser(app: FastifyInstance, { page, publicAddress }: ServerOptions): Promise<void> {
  await app.register(helmet, {
    contentSecurityPolicy: {
      useDefaults: false,
      directives: {
        defaultSrc: ["'self'"],
        scriptSrc: ["'self'", ...briefingScript(page)],
        // The text editor writes its rules into the page as it grows; style can change looks, not run.
        styleSrc: ["'self'", "'unsafe-inline'"],
        imgSrc: ["'self'", 'data:', 'blob:'],
        fontSrc: ["'self'", 'data:'],
        connectSrc: ["'self'", 'data:', 'blob:'],
        workerSrc: ["'self'"],
        objectSrc: ["'none'"],
        baseUri: ["'none'"],
        formAction: ["'self'"],
        frameAncestors: ["'none'"],
      },
    },
    crossOriginEmbedderPolicy: { policy: 'require-corp' },
    crossOriginOpenerPolicy: { policy: 'same-origin' },
    crossOriginResourcePolicy: { policy: 'same-origin' },
    referrerPolicy: { policy: 'no-referrer' },
    strictTransportSecurity: publicAddress === null ? false : { maxAge: 31_536_000 },
  });
}

export async function servePage(app: FastifyInstance, page: string | null): Promise<void> {
  if (page === null) return;
  // A folder has no answer of its own: its page is named.
  app.get('/', { schema: { hide: true } }, async (_request, reply) =>
    reply
      .type('text/html')
      .header('cache-control', 'no-cache')
      .send(readFileSync(join(page, 'index.html'))),
  );
  await app.register(fastifyStatic, {
    root: page,
    preCompressed: true,
    index: false,
    dotfiles: 'ignore',
    cacheControl: false,
    setHeaders: (reply, path) => {
      // Names of built files carry their content.
      const isBuilt = path.includes('/assets/') || path.includes('\\assets\\');
      reply.setHeader('cache-control', isBuilt ? 'public, max-age=31536000, immutable' : 'no-cache');
    },
  });
}

/** The briefing is a page of its own with its script inside; that one script may run, known by its hash. */
function briefingScript(page: string | null): string[] {
  const file = page === null ? '' : join(page, 'briefing', 'page-script.js');
  if (!existsSync(file)) return [];
  return [`'sha256-${createHash('sha256').update(readFileSync(file)).digest('base64')}'`];
}
