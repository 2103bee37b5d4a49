/**
 * Runs the browser worker script of the `minizinc` package inside a worker thread: its WebAssembly build holds the compiler and
 * Chuffed in one module, while its entry for Node starts a program that has to be installed. The script asks for the few things
 * of a browser that are put here. It must not see `process`, or it would take itself to be under Node.
 */
import { readFileSync } from 'node:fs';
import { createRequire } from 'node:module';
import { dirname, join } from 'node:path';
import { pathToFileURL } from 'node:url';
import { runInThisContext } from 'node:vm';
import { parentPort, workerData } from 'node:worker_threads';

const require = createRequire(import.meta.url);
const script = require.resolve('minizinc/minizinc-worker.js');
const folder = dirname(script);
// Not a file address: those the script would ask for in a way of old browsers instead of `fetch`.
const SCHEME = 'package:';

const listeners = [];
globalThis.self = globalThis;
globalThis.WorkerGlobalScope = Object;
globalThis.location = { href: pathToFileURL(script).href, pathname: script };
globalThis.addEventListener = (type, listener) => {
  if (type === 'message') listeners.push(listener);
};
globalThis.postMessage = (message) => parentPort.postMessage(message);
globalThis.fetch = async (/** @type {string} */ address) => new Response(readFileSync(join(folder, address.slice(SCHEME.length))));
// Compiled once by whoever starts the workers: 18 MB of code would take longer than most solves.
WebAssembly.instantiateStreaming = async (_, imports) => ({
  module: workerData.module,
  instance: await WebAssembly.instantiate(workerData.module, imports),
});
globalThis.process = undefined;

runInThisContext(readFileSync(script, 'utf8'), { filename: script });
parentPort.on('message', (data) => {
  for (const listener of listeners) listener({ data });
});
for (const listener of listeners) {
  listener({ data: { wasmURL: `${SCHEME}minizinc.wasm`, dataURL: `${SCHEME}minizinc.data` } });
}
