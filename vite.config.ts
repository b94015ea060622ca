import preact from '@preact/preset-vite';
import { defineConfig } from 'vite';
import { contentPolicy, POLICY_HEADERS } from './src/build/contentPolicy.ts';
import { handOut } from './src/build/handOut.ts';
import { hearing } from './src/build/hearingChunk.ts';
import { leanGeoTiff } from './src/build/leanGeoTiff.ts';
import { leanPhaser } from './src/build/leanPhaser.ts';
import { sharedWorker } from './src/build/sharedWorker.ts';

/** A browser is opened only where a person would see it. */
const hasScreen = !process.env['CI'] && (process.platform !== 'linux' || Boolean(process.env['DISPLAY'] ?? process.env['WAYLAND_DISPLAY']));

// Root is the browser's folder so that the top level of the project stays short.
export default defineConfig({
  root: 'src/browser',
  base: './',
  publicDir: '../../assets/public',
  plugins: [preact({ prefreshEnabled: false }), leanPhaser, leanGeoTiff, sharedWorker, contentPolicy, handOut],
  worker: { format: 'es' },
  build: {
    outDir: '../../dist/browser',
    emptyOutDir: true,
    target: 'es2022',
    // The worklet and the worker must stay files of their own: a data: script would need a wider content policy.
    assetsInlineLimit: 0,
    // What a worker needs is not fetched ahead by tags in the page.
    modulePreload: { resolveDependencies: (_, needed, { hostId }) => (/\.worker/.test(hostId) ? [] : needed) },
    rolldownOptions: { output: { codeSplitting: { groups: [{ name: hearing(), minShareCount: 2 }] } } },
    chunkSizeWarningLimit: 1800,
  },
  preview: { port: 4173, host: '127.0.0.1', strictPort: false, open: hasScreen, headers: POLICY_HEADERS },
});
