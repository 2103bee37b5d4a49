import { readFileSync } from 'node:fs';
import { join } from 'node:path';
import react from '@vitejs/plugin-react';
import { defineConfig, type Plugin } from 'vite';

/** Emits the service worker with the names of all built files in it, so that the page works while the server is away. */
function serviceWorker(): Plugin {
  return {
    name: 'service-worker',
    apply: 'build',
    generateBundle(_options, bundle) {
      const built = Object.keys(bundle).filter((name) => /\.(js|css|woff2)$/.test(name));
      // Names of built files carry their content: the list of them is the stamp of the whole.
      const stamp = [...built]
        .sort()
        .join('|')
        .split('')
        .reduce((sum, sign) => (sum * 31 + sign.charCodeAt(0)) >>> 0, 7);
      const source = readFileSync(join(import.meta.dirname, 'src/offline/service-worker.js'), 'utf8')
        .replace('self.__BUILT__', JSON.stringify(built.map((name) => `/${name}`)))
        .replace('self.__STAMP__', `'${stamp.toString(36)}'`);
      this.emitFile({ type: 'asset', fileName: 'service-worker.js', source });
    },
  };
}

/** Style sheet and script of the briefing, as files beside the page: the briefing that is made in the page carries them in itself. */
function briefingParts(): Plugin {
  return {
    name: 'briefing-parts',
    apply: 'build',
    generateBundle() {
      for (const name of ['page-style.css', 'page-script.js']) {
        const source = readFileSync(join(import.meta.dirname, '../cli/src/page', name), 'utf8');
        this.emitFile({ type: 'asset', fileName: `briefing/${name}`, source });
      }
    },
  };
}

export default defineConfig({
  root: import.meta.dirname,
  plugins: [react(), briefingParts(), serviceWorker()],
  worker: { format: 'es' },
  build: { outDir: 'dist/page', emptyOutDir: true, target: 'es2023', sourcemap: false, manifest: true },
  // While developing, the page comes from Vite and the answers from a server started beside it.
  server: { proxy: { '/api': 'http://127.0.0.1:4600' } },
});
