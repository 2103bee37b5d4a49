/** Whatever goes wrong with a request is answered as one of the published errors. */
import { randomUUID } from 'node:crypto';
import type { FastifyError, FastifyReply, FastifyRequest } from 'fastify';
import type { ApiErrorCode } from '@handrail/wire/api/api-errors';
import { ServerFault } from '../server-fault.ts';

export function answerFault(
  error: FastifyError | ServerFault,
  request: FastifyRequest,
  reply: FastifyReply,
): FastifyReply {
  const fault = error instanceof ServerFault ? error : faultOf(error, request);
  const { code, message, advice, head, status } = fault;
  return reply.status(status).type('application/json').serializer(JSON.stringify).send({ code, message, advice, head });
}

function faultOf(error: FastifyError, request: FastifyRequest): ServerFault {
  if (error.validation !== undefined) {
    const [issue] = error.validation;
    const at = issue?.instancePath.replaceAll('/', '.').replace(/^\./, '') ?? '';
    const part = error.validationContext ?? 'request';
    const words = `${part}${at === '' ? '' : ` at ${at}`}: ${issue?.message ?? error.message}`;
    return new ServerFault('request/wrong-shape', words.slice(0, 400));
  }
  const status = error.statusCode ?? 500;
  if (status === 413) return new ServerFault('request/too-large', 'the request is too large');
  if (status === 415)
    return new ServerFault(
      'request/wrong-media-type',
      `${(request.headers['content-type'] ?? 'nothing').slice(0, 80)} is not read here`,
    );
  if (status === 429) return new ServerFault('request/too-many', 'too many requests in a minute');
  if (status === 404) return new ServerFault('request/unknown-path', 'nothing is at this path');
  if (status >= 400 && status < 500) return new ServerFault('request/not-readable', error.message.slice(0, 200));
  const number = randomUUID();
  request.log.error({ number, err: error }, 'failed');
  return new ServerFault('server/failed', `the server failed; the log has it under ${number}`);
}

/** What is no HTTP at all never reaches a route. */
export function notReadable(): string {
  const code: ApiErrorCode = 'request/not-readable';
  return JSON.stringify({ code, message: 'the request is no HTTP that can be read', advice: null, head: null });
}
