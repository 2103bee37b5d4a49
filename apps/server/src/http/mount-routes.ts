/** Puts every route of the list on the server: checks who and what before its handler, writes down every write after it. */
import { API_ROUTES, type ApiRoute, type ApiRouteId } from '@handrail/wire/api/api-routes';
import { serverError } from '@handrail/wire/api/api-schemas';
import type { FastifyInstance, FastifyReply, FastifyRequest } from 'fastify';
import { accountRoutes } from '../routes/account-routes.ts';
import { campaignRoutes } from '../routes/campaign-routes.ts';
import type { Asked, Handler, Handlers } from '../routes/handlers.ts';
import { liveRoutes } from '../routes/live-routes.ts';
import { systemRoutes } from '../routes/system-routes.ts';
import { ServerFault } from '../server-fault.ts';
import type { Person, Serving } from '../serving.ts';
import { hasMetricsToken, mustBeAllowed, mustComeFromOurPage, whoAsks } from './guard.ts';

const HANDLERS: Handlers = { ...accountRoutes, ...campaignRoutes, ...liveRoutes, ...systemRoutes };
/** Largest body of a route, bytes: a text of 4 million characters of four bytes each, and its plan. */
const MOST_WORK = 24_000_000;
const MOST_MODEL = 32_000_000;
const MOST_ELSE = 64_000;
/** Drafts and places come every few seconds: they are no deeds. */
const NOT_WRITTEN_DOWN: ReadonlySet<ApiRouteId> = new Set(['keepDraft', 'dropDraft', 'showPresence', 'signIn']);
const CARRIES_WORK: ReadonlySet<ApiRouteId> = new Set(['addCampaign', 'saveVersion', 'keepDraft']);

export function mountRoutes(app: FastifyInstance, serving: Serving): void {
  for (const id of Object.keys(API_ROUTES) as ApiRouteId[]) mount(app, serving, id, API_ROUTES[id]);
}

function mount(app: FastifyInstance, serving: Serving, id: ApiRouteId, route: ApiRoute): void {
  const handle = HANDLERS[id] as Handler<ApiRouteId>;
  const people = new WeakMap<FastifyRequest, Person>();
  app.route({
    method: route.method,
    url: route.path,
    bodyLimit: route.body === 'model/gltf-binary' ? MOST_MODEL : CARRIES_WORK.has(id) ? MOST_WORK : MOST_ELSE,
    config:
      id === 'signIn' || id === 'setUp'
        ? { rateLimit: { max: serving.options.perMinute.logins, timeWindow: 60_000 } }
        : {},
    schema: schemaOf(id, route),
    // Before the body is read: whoever may not ask is not listened to.
    onRequest: async (request) => {
      mustComeFromOurPage(serving, request);
      const who = await whoAsks(serving, request);
      if (id !== 'readMetrics' || !hasMetricsToken(serving, request)) mustBeAllowed(route.access, who);
      people.set(request, who);
    },
    handler: async (request: FastifyRequest, reply: FastifyReply) => {
      const who = people.get(request) ?? { id: '', name: '', roles: [] };
      const { params, query, body } = request;
      if (route.body === 'model/gltf-binary' && !Buffer.isBuffer(body)) {
        throw new ServerFault('request/wrong-media-type', 'a drawing is sent as model/gltf-binary');
      }
      if (route.answers !== 204) {
        reply.status(route.answers[0]);
        if (typeof route.answers[1] === 'string') reply.type(route.answers[1]);
      }
      const answer = await handle(serving, {
        params,
        query,
        body,
        who,
        request,
        reply,
      } as unknown as Asked<ApiRouteId>);
      if (route.method !== 'GET' && !NOT_WRITTEN_DOWN.has(id)) {
        const named = Object.values((params ?? {}) as Record<string, unknown>).join(' ');
        const by = who.name === '' && id === 'setUp' ? 'set-up' : who.name;
        await serving.storage.audit.write({ atUtcMs: Date.now(), by, what: id, of: named });
      }
      if (route.answers === 204) return await reply.status(204).send();
      return answer;
    },
  });
}

function schemaOf(id: ApiRouteId, route: ApiRoute): Record<string, unknown> {
  const { answers, body } = route;
  const good = answers === 204 ? {} : typeof answers[1] === 'string' ? {} : { [answers[0]]: answers[1] };
  return {
    operationId: id,
    summary: route.does,
    tags: [route.access],
    ...(route.params === undefined ? {} : { params: route.params }),
    ...(route.query === undefined ? {} : { querystring: route.query }),
    ...(body === undefined || typeof body === 'string' ? {} : { body }),
    response: { ...good, '4xx': serverError, '5xx': serverError },
  };
}
