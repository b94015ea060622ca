import type { Plugin } from 'vite';

/** Unpackers of the library that are left out: our own do Deflate, LZW and PackBits, the others are refused before they are asked for. */
const LEFT_OUT = /\/geotiff\/dist-module\/compression\/(deflate|jpeg|lerc|lzw|packbits|webimage|zstd)\.js$/;

/** Leaves 90 kB of script by gzip out of the page that nothing in it would ever run. */
export const leanGeoTiff: Plugin = {
  name: 'lean-geotiff',
  enforce: 'pre',
  load: (id) =>
    LEFT_OUT.test(id.replaceAll('\\', '/'))
      ? 'export const zstd = { init() {} };\nexport default class { constructor() { throw new Error("a packing that is not read"); } }\n'
      : null,
};
