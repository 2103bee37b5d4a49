/** What others do while one looks, and the drawings that lie beside a campaign. */
import { ServerFault } from '../server-fault.ts';
import type { Handlers } from './handlers.ts';

/** The file begins with "glTF", its version, and its own length. @source Khronos Group, glTF 2.0 Specification, 4.4.2 */
const GLB_MAGIC = 0x46546c67;

export const liveRoutes: Pick<Handlers, 'followCampaign' | 'showPresence' | 'openModel' | 'keepModel'> = {
  followCampaign: async ({ folder, live }, { params, who, request, reply }) => {
    await folder.opened(params.id);
    const last = request.headers['last-event-id'];
    const after = typeof last === 'string' && /^\d{1,9}$/.test(last) ? Number(last) : null;
    const headers = Object.fromEntries(Object.entries(reply.getHeaders()).map(([name, value]) => [name, value ?? '']));
    reply.hijack();
    reply.raw.writeHead(200, {
      ...headers,
      'content-type': 'text/event-stream',
      'cache-control': 'no-store',
      // Some proxies gather answers before they pass them on.
      'x-accel-buffering': 'no',
    });
    await live.follow(params.id, who, reply.raw, after);
  },
  showPresence: async ({ folder, live }, { params, body, who }) => {
    await folder.opened(params.id);
    live.setPlace(params.id, who, body.at);
  },
  openModel: async ({ folder }, { params }) => {
    const { file } = await folder.opened(params.id);
    const bytes = folder.model(file, params.name);
    if (bytes === null) throw new ServerFault('model/unknown', `"${params.id}" has no drawing ${params.name}`);
    return bytes;
  },
  keepModel: async ({ folder }, { params, body }) => {
    const { file } = await folder.opened(params.id);
    const isDrawing =
      body.length >= 20 &&
      body.readUInt32LE(0) === GLB_MAGIC &&
      body.readUInt32LE(4) === 2 &&
      body.readUInt32LE(8) === body.length;
    if (!isDrawing) throw new ServerFault('model/not-a-drawing', `${params.name} is no binary glTF 2.0 file`);
    folder.keepModel(file, params.name, body);
  },
};
