/** For those who look after the server. */
import { PROGRAM_VERSION } from '../server-options.ts';
import type { Handlers } from './handlers.ts';

const AUDIT_ROWS = 200;

export const systemRoutes: Pick<Handlers, 'listAudit' | 'readHealth' | 'readMetrics' | 'readOpenApi'> = {
  listAudit: async ({ storage }, { query }) => [...(await storage.audit.list(query.before, AUDIT_ROWS))],
  readHealth: async ({ storage }) => ({
    state: 'well' as const,
    program: PROGRAM_VERSION,
    schema: await storage.check(),
  }),
  readMetrics: async (_serving, { request, reply }) => {
    const { registry } = request.server;
    reply.type(registry.contentType);
    return await registry.metrics();
  },
  readOpenApi: (_serving, { request }) => request.server.swagger() as unknown as Record<string, unknown>,
};
