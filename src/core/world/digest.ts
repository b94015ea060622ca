import type { MapPoint } from '../units/frames';
import type { World } from './world';

/** Two 32-bit FNV-1a sums over the same bytes, the second begun elsewhere; together 64 bits. */
class Digest {
  private a = 0x811c9dc5;
  private b = 0x2f0b4c47;
  private readonly scratch = new DataView(new ArrayBuffer(8));

  bytes(values: Uint8Array): void {
    let { a, b } = this;
    for (let i = 0; i < values.length; i++) {
      a = Math.imul(a ^ values[i]!, 0x01000193);
      b = Math.imul(b ^ values[i]!, 0x01000193) + 0x9e3779b1;
    }
    this.a = a;
    this.b = b | 0;
  }

  /** Always little-endian, whatever the machine. */
  number(value: number): void {
    this.scratch.setFloat64(0, value, true);
    this.bytes(new Uint8Array(this.scratch.buffer));
  }

  point(p: MapPoint & { readonly zM?: number }): void {
    this.number(p.eM);
    this.number(p.nM);
    if (p.zM !== undefined) this.number(p.zM);
  }

  toString(): string {
    return [this.a, this.b].map((half) => (half >>> 0).toString(16).padStart(8, '0')).join('');
  }
}

/** Sixteen hex digits over everything in the world: heights, cover and every coordinate. */
export function worldDigest(world: World): string {
  const digest = new Digest();
  digest.number(world.sizeM);
  digest.number(world.cellM);
  const heights = new DataView(new ArrayBuffer(4 * world.groundM.values.length));
  world.groundM.values.forEach((h, i) => {
    heights.setFloat32(4 * i, h, true);
  });
  digest.bytes(new Uint8Array(heights.buffer));
  digest.bytes(world.cover.values);
  digest.bytes(world.trackMask.values);
  for (const line of [...world.tracks, ...world.streams, ...world.fieldWalls]) {
    digest.number(line.points.length);
    for (const p of line.points) digest.point(p);
  }
  for (const { corners, groundM, heightM } of world.buildings) {
    for (const p of corners) digest.point(p);
    digest.number(groundM);
    digest.number(heightM);
  }
  for (const { supports, spans } of world.powerLines) {
    for (const { foot, heightM } of supports) {
      digest.point(foot);
      digest.number(heightM);
    }
    for (const { from, to, sagM } of spans) {
      digest.point(from);
      digest.point(to);
      digest.number(sagM);
    }
  }
  return digest.toString();
}
