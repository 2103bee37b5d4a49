// Loaded before dependency-cruiser: its swc reader takes every file for plain TypeScript and dies of the first tag in a .tsx file.
import { createRequire } from 'node:module';

const swc = createRequire(import.meta.url)('@swc/core');
const { parseFileSync } = swc;
swc.parseFileSync = (file, options) => parseFileSync(file, { ...options, tsx: file.endsWith('.tsx') });
