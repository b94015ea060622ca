import { defineConfig } from 'vite';

/** The command line as one file for a packed install; what it depends on stays in node_modules. */
export default defineConfig({
  build: { ssr: 'src/cli/main.ts', outDir: 'dist/cli', emptyOutDir: true, target: 'node20' },
});
