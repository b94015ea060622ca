import { addDecoder, BaseDecoder } from 'geotiff';
import { unLzw } from '../../core/elevation/lzw';
import { unPackBits } from '../../core/elevation/packBits';
import { unzlibbed } from '../../core/scenario/packing';

/** Most bytes that one strip or tile is unpacked to: 2,048 by 2,048 cells of 8 bytes. */
export const MOST_BLOCK_BYTES = 32_000_000;

/** Ways to pack that are read, by their number in the file. */
export const READ_PACKINGS: readonly number[] = [1, 5, 8, 32_773, 32_946];
const PACKING_NAMES: Readonly<Record<number, string>> = {
  6: 'JPEG',
  7: 'JPEG',
  34887: 'LERC',
  34925: 'LZMA',
  50000: 'Zstandard',
  50001: 'WebP',
  50002: 'JPEG XL',
};
export const packingName = (packing: number): string => PACKING_NAMES[packing] ?? `number ${packing}`;

type Unpack = (bytes: Uint8Array, mostBytes: number) => Uint8Array | null;

/** The library's own unpackers make as much room as a file asks for; these stop at what its cells need. */
const bounded = (unpack: Unpack) =>
  class extends BaseDecoder {
    override decodeBlock(packed: ArrayBufferLike): ArrayBufferLike {
      const { tileWidth, tileHeight, bitsPerSample, planarConfiguration } = this.parameters;
      const bits = typeof bitsPerSample === 'number' ? [bitsPerSample] : Array.from(bitsPerSample);
      const perCell = planarConfiguration === 2 ? bits[0]! : bits.reduce((sum, one) => sum + one, 0);
      const bytes = unpack(new Uint8Array(packed), Math.min(MOST_BLOCK_BYTES, (tileWidth * tileHeight * perCell) / 8));
      if (!bytes) throw new Error('a packed part that is cut off or changed');
      return bytes.slice().buffer;
    }
  };

addDecoder([8, 32_946], async () => bounded(unzlibbed));
addDecoder(5, async () => bounded(unLzw));
addDecoder(32_773, async () => bounded(unPackBits));
