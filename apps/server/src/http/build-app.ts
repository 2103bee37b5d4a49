/** The server put together, not yet listening. */
import { readFileSync } from 'node:fs';
import { join } from 'node:path';
import compress from '@fastify/compress';
import cookie from '@fastify/cookie';
import rateLimit from '@fastify/rate-limit';
import swagger from '@fastify/swagger';
import Fastify, { type FastifyInstance } from 'fastify';
import { jsonSchemaTransform, serializerCompiler, validatorCompiler } from 'fastify-type-provider-zod';
import { ServerFault } from '../server-fault.ts';
import { PROGRAM_VERSION } from '../server-options.ts';
import type { Serving } from '../serving.ts';
import { answerFault, notReadable } from './answer-fault.ts';
import { countRequests } from './count-requests.ts';
import { mustBeOurHost } from './guard.ts';
import { mountRoutes } from './mount-routes.ts';
import { servePage, tellTheBrowser } from './serve-page.ts';

/** A slow sender is let go: a body of 24 MB in two minutes is a poor line. */
const REQUEST_MS = 120_000;

export async function buildApp(serving: Serving): Promise<FastifyInstance> {
  const { options } = serving;
  const app = Fastify({
    logger: { level: 'warn' },
    requestTimeout: REQUEST_MS,
    bodyLimit: 64_000,
    // Behind a proxy the address of the asker stands in its header; else nobody is believed about it.
    trustProxy: options.publicAddress === null ? false : (_address: string, hop: number) => hop < 1,
    routerOptions: { maxParamLength: 128, ignoreTrailingSlash: false },
    forceCloseConnections: true,
    frameworkErrors: (error, request, reply) => void answerFault(error, request, reply),
    clientErrorHandler: (_error, socket) => {
      if (!socket.writable) return;
      const words = notReadable();
      socket.end(
        `HTTP/1.1 400 Bad Request\r\ncontent-type: application/json\r\nconnection: close\r\ncontent-length: ${words.length}\r\n\r\n${words}`,
      );
    },
  });
  app.setValidatorCompiler(validatorCompiler);
  app.setSerializerCompiler(serializerCompiler);
  app.setErrorHandler(answerFault);
  app.addHook('onRequest', async (request) => mustBeOurHost(serving, request));
  app.addContentTypeParser('model/gltf-binary', { parseAs: 'buffer' }, (_request, body, done) => done(null, body));
  countRequests(app, serving.live);
  await tellTheBrowser(app, options);
  await app.register(cookie);
  await app.register(compress, { global: true, threshold: 2048, encodings: ['br', 'gzip'] });
  await app.register(rateLimit, {
    max: options.perMinute.requests,
    timeWindow: 60_000,
    allowList: (request) => !request.url.startsWith('/api/'),
  });
  await app.register(swagger, {
    openapi: {
      openapi: '3.1.0',
      info: {
        title: 'Handrail',
        version: PROGRAM_VERSION,
        description: 'Campaigns, their versions, and who may do what.',
      },
    },
    transform: jsonSchemaTransform,
  });
  mountRoutes(app, serving);
  await servePage(app, options.page);
  app.setNotFoundHandler(async (request, reply) => {
    const isPage =
      request.method === 'GET' &&
      (request.url === '/' || /^\/campaigns?\/[^.]*$/.test(request.url.split('?')[0] ?? ''));
    if (isPage && options.page !== null) {
      return await reply
        .type('text/html')
        .header('cache-control', 'no-cache')
        .send(readFileSync(join(options.page, 'index.html')));
    }
    throw new ServerFault('request/unknown-path', `nothing is at ${request.method} ${request.url.slice(0, 100)}`);
  });
  await app.ready();
  return app;
}
