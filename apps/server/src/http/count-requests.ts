/** Figures for a monitor. */
import type { FastifyInstance } from 'fastify';
import { collectDefaultMetrics, Gauge, Histogram, Registry } from 'prom-client';
import type { LiveHub } from '../live/live-hub.ts';

declare module 'fastify' {
  interface FastifyInstance {
    readonly registry: Registry;
  }
}

export function countRequests(app: FastifyInstance, live: LiveHub): void {
  const registry = new Registry();
  collectDefaultMetrics({ register: registry });
  const took = new Histogram({
    name: 'handrail_request_seconds',
    help: 'How long requests took, by route and status',
    labelNames: ['method', 'route', 'status'],
    buckets: [0.005, 0.02, 0.1, 0.5, 2, 10],
    registers: [registry],
  });
  new Gauge({
    name: 'handrail_live_streams',
    help: 'Pages that follow a campaign',
    registers: [registry],
    collect() {
      this.set(live.count);
    },
  });
  app.decorate('registry', registry);
  app.addHook('onResponse', async (request, reply) => {
    const route = request.routeOptions.url ?? 'none';
    took.observe({ method: request.method, route, status: reply.statusCode }, reply.elapsedTime / 1000);
  });
}
