import preact from '@preact/preset-vite';
import { defineConfig, type Plugin } from 'vite';

/** What the built page may load: itself. Phaser makes pictures from data: and blob: addresses; nothing evaluates text. */
const CONTENT_POLICY =
  "default-src 'self'; img-src 'self' data: blob:; style-src 'self'; script-src 'self'; worker-src 'self'; connect-src 'self'; object-src 'none'; base-uri 'none'; form-action 'none'";

const contentPolicy: Plugin = {
  name: 'content-policy',
  apply: 'build', // the development server puts its styles into the page itself
  transformIndexHtml: () => [
    { tag: 'meta', attrs: { 'http-equiv': 'Content-Security-Policy', content: CONTENT_POLICY }, injectTo: 'head-prepend' },
  ],
};

/** A browser is opened only where a person would see it. */
const hasScreen = !process.env['CI'] && (process.platform !== 'linux' || Boolean(process.env['DISPLAY'] ?? process.env['WAYLAND_DISPLAY']));

// Root is the browser's folder so that the top level of the project stays short.
export default defineConfig({
  root: 'src/browser',
  base: './',
  publicDir: '../../assets/public',
  plugins: [preact({ prefreshEnabled: false }), contentPolicy],
  worker: { format: 'es' },
  build: {
    outDir: '../../dist/browser',
    emptyOutDir: true,
    target: 'es2022',
    // The worklet and the worker must stay files of their own: a data: script would need a wider content policy.
    assetsInlineLimit: 0,
    chunkSizeWarningLimit: 1800,
  },
  preview: { port: 4173, host: '127.0.0.1', strictPort: false, open: hasScreen },
});
