type Tag = readonly [id: number, type: 'short' | 'long' | 'double' | 'ascii', values: readonly number[] | string];

const TYPES = { ascii: [2, 1], short: [3, 2], long: [4, 4], double: [12, 8] } as const;

export type MadeTiff = {
  readonly columns: number;
  readonly rows: number;
  /** By row from the north. */
  readonly heights: ArrayLike<number>;
  readonly bits?: 16 | 32 | 64;
  readonly packing?: number;
  /** Bytes as they lie in the one strip, packed already. */
  readonly strip?: Uint8Array;
  readonly predictor?: number;
  readonly bands?: number;
  readonly scale?: readonly number[] | null;
  readonly tiePoint?: readonly number[];
  readonly transformation?: readonly number[];
  /** Key and value, one after the other. */
  readonly keys?: Readonly<Record<number, number>>;
  readonly noData?: string;
};

/** A GeoTIFF of one strip, lowest byte first, written after TIFF 6.0 and the OGC standard: whole numbers of 16 bits or floats. */
export function madeTiff({
  columns,
  rows,
  heights,
  bits = 32,
  packing = 1,
  strip,
  predictor = 1,
  bands = 1,
  scale = [30, 30, 0],
  tiePoint = [0, 0, 0, 500_000, 5_200_000, 0],
  transformation,
  keys = { 1024: 1, 3076: 9001 },
  noData,
}: MadeTiff): ArrayBuffer {
  const bytes = strip ?? rawStrip(heights, bits);
  const geo = Object.entries(keys).flatMap(([key, value]) => [Number(key), 0, 1, value]);
  const tags: Tag[] = [
    [256, 'long', [columns]],
    [257, 'long', [rows]],
    [258, 'short', Array(bands).fill(bits)],
    [259, 'short', [packing]],
    [262, 'short', [1]],
    [273, 'long', [8]],
    [277, 'short', [bands]],
    [278, 'long', [rows]],
    [279, 'long', [bytes.length]],
    [317, 'short', [predictor]],
    [339, 'short', Array(bands).fill(bits === 16 ? 2 : 3)],
    ...(scale ? ([[33550, 'double', scale]] as const) : []),
    ...(scale ? ([[33922, 'double', tiePoint]] as const) : []),
    ...(transformation ? ([[34264, 'double', transformation]] as const) : []),
    [34735, 'short', [1, 1, 0, geo.length / 4, ...geo]],
    ...(noData ? ([[42113, 'ascii', `${noData}\0`]] as const) : []),
  ];
  const directoryAt = 8 + bytes.length + (bytes.length % 2);
  let overflowAt = directoryAt + 2 + 12 * tags.length + 4;
  const room = new DataView(new ArrayBuffer(overflowAt + 4_096));
  for (const [at, value] of [0x49, 0x49, 42, 0].entries()) room.setUint8(at, value);
  room.setUint32(4, directoryAt, true);
  new Uint8Array(room.buffer).set(bytes, 8);
  room.setUint16(directoryAt, tags.length, true);
  tags.forEach(([id, type, values], i) => {
    const at = directoryAt + 2 + 12 * i;
    const [code, width] = TYPES[type];
    room.setUint16(at, id, true);
    room.setUint16(at + 2, code, true);
    room.setUint32(at + 4, values.length, true);
    const inPlace = values.length * width <= 4;
    if (!inPlace) room.setUint32(at + 8, overflowAt, true);
    const from = inPlace ? at + 8 : overflowAt;
    if (!inPlace) overflowAt += values.length * width;
    for (let k = 0; k < values.length; k++) {
      const value = typeof values === 'string' ? values.charCodeAt(k) : values[k]!;
      if (type === 'ascii') room.setUint8(from + k, value);
      else if (type === 'short') room.setUint16(from + 2 * k, value, true);
      else if (type === 'long') room.setUint32(from + 4 * k, value, true);
      else room.setFloat64(from + 8 * k, value, true);
    }
  });
  return room.buffer.slice(0, overflowAt);
}

export function rawStrip(heights: ArrayLike<number>, bits: 16 | 32 | 64): Uint8Array {
  const values = Array.from(heights);
  const typed = bits === 16 ? Int16Array.from(values) : bits === 32 ? Float32Array.from(values) : Float64Array.from(values);
  return new Uint8Array(typed.buffer);
}
