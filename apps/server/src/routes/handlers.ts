/** Types of what handles a route, read off the list of routes: a route without a handler does not compile. */
import type { API_ROUTES, ApiRouteId } from '@handrail/wire/api/api-routes';
import type { FastifyReply, FastifyRequest } from 'fastify';
import type { z } from 'zod';
import type { Person, Serving } from '../serving.ts';

type Route<K extends ApiRouteId> = (typeof API_ROUTES)[K];
type Part<R, K extends string> = R extends { readonly [P in K]: infer S }
  ? S extends z.ZodType
    ? z.output<S>
    : Buffer
  : undefined;
type Answer<R> = R extends { readonly answers: readonly [number, infer S] }
  ? S extends z.ZodType
    ? z.output<S>
    : unknown
  : void;

export interface Asked<K extends ApiRouteId> {
  readonly params: Part<Route<K>, 'params'>;
  readonly query: Part<Route<K>, 'query'>;
  readonly body: Part<Route<K>, 'body'>;
  /** Who asks; on a route for anyone, possibly nobody: then of id ''. */
  readonly who: Person;
  readonly request: FastifyRequest;
  readonly reply: FastifyReply;
}
export type Handler<K extends ApiRouteId> = (
  serving: Serving,
  asked: Asked<K>,
) => Promise<Answer<Route<K>>> | Answer<Route<K>>;
export type Handlers = { readonly [K in ApiRouteId]: Handler<K> };
