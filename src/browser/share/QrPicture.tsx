import { encode } from 'uqr';

/** Light modules around the code. @source ISO/IEC 18004, quiet zone of 4 modules */
const QUIET = 4;

/**
 * A QR code, black on white in every palette, for that is what phones look for. Level L: a projector's picture is whole, so that
 * larger modules help more than spare ones.
 */
export function QrPicture({ text, name }: { readonly text: string; readonly name: string }) {
  const { data, size } = encode(text, { ecc: 'L', border: 0 });
  const side = size + 2 * QUIET;
  return (
    <svg class="qr" viewBox={`${-QUIET} ${-QUIET} ${side} ${side}`} role="img" aria-label={name} shape-rendering="crispEdges">
      <rect x={-QUIET} y={-QUIET} width={side} height={side} fill="#fff" />
      <path d={data.map(rowPath).join('')} fill="#000" />
    </svg>
  );
}

/** Dark modules of a row, neighbours in one stroke. */
function rowPath(row: readonly boolean[], y: number): string {
  let path = '';
  for (let x = 0; x < row.length; x++) {
    if (!row[x] || row[x - 1]) continue;
    let end = x;
    while (row[end]) end++;
    path += `M${x} ${y}h${end - x}v1h${x - end}z`;
  }
  return path;
}
