import type { Plugin } from 'vite';

/**
 * What the page may load and do: its own files, and nothing that is text. Phaser makes pictures from data: and blob: addresses; the
 * one policy for trusted types is `browser/trustedScripts.ts`.
 */
const DIRECTIVES: readonly string[] = [
  "default-src 'none'",
  "script-src 'self'",
  "worker-src 'self'",
  "style-src 'self'",
  "font-src 'self'",
  "img-src 'self' data: blob:",
  "connect-src 'self'",
  "manifest-src 'self'",
  "base-uri 'none'",
  "form-action 'none'",
  "require-trusted-types-for 'script'",
  'trusted-types default',
];

/** For a server: a page can't forbid by itself that another one frames it. */
export const POLICY_HEADERS: Readonly<Record<string, string>> = {
  'Content-Security-Policy': [...DIRECTIVES, "frame-ancestors 'none'"].join('; '),
  'X-Content-Type-Options': 'nosniff',
  'Referrer-Policy': 'no-referrer',
};

/** The same inside the built page, so that it holds on a host that sends no headers. */
export const contentPolicy: Plugin = {
  name: 'content-policy',
  apply: 'build', // the development server puts its styles into the page itself
  transformIndexHtml: () => [
    { tag: 'meta', attrs: { 'http-equiv': 'Content-Security-Policy', content: DIRECTIVES.join('; ') }, injectTo: 'head-prepend' },
  ],
};
