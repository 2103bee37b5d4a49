import react from '@vitejs/plugin-react';
import { defineConfig } from 'vite';

export default defineConfig({
  root: import.meta.dirname,
  plugins: [react()],
  worker: { format: 'es' },
  build: { outDir: 'dist/page', emptyOutDir: true, target: 'es2023', sourcemap: false },
  // While developing, the page comes from Vite and the answers from a server started beside it.
  server: { proxy: { '/api': 'http://127.0.0.1:4600' } },
});
