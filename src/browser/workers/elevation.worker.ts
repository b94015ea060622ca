import { type ElevationGrid, factsOf } from '../../core/elevation/elevationGrid';
import { readEsriGrid } from '../../core/elevation/esriGrid';
import { packedPiece } from '../../core/elevation/ownGround';
import { previewOf } from '../../core/elevation/preview';
import { gridTrouble, remarksOn } from '../../core/elevation/remarks';
import { clipHeights } from '../../core/elevation/window';
import { InputFaults } from '../../core/scenario/faults';
import { isTiff } from '../geoTiff/isTiff';
import type { FromElevation, GridSaid, ToElevation } from './elevationMessages';

/** Cells along the longer side of the picture. */
const PREVIEW_CELLS = 480;
/** The heights are the first half of the way to a piece, packing them the second. */
const CUT_SHARE = 0.5;
const tell = (message: FromElevation) => postMessage(message);
const toldShare = (share: number) => tell({ kind: 'share', share });

let grid: ElevationGrid | null = null;

/** Reads an elevation file where it can be ended, and keeps it for the pieces that are cut out of it. */
addEventListener('message', async ({ data }: MessageEvent<ToElevation>) => {
  if (data.kind === 'cut') {
    const cut = clipHeights(grid!, data.piece, (share) => toldShare(share * CUT_SHARE));
    tell({ kind: 'cut', piece: typeof cut === 'string' ? cut : packedPiece(cut) });
    return;
  }
  const { file, unit } = data;
  try {
    const bytes = await file.arrayBuffer();
    tell({ kind: 'begun' });
    grid = isTiff(bytes)
      ? await (await import('../geoTiff/readGeoTiff')).readGeoTiff(file.name, bytes, unit, toldShare)
      : readEsriGrid(file.name, new TextDecoder().decode(bytes), unit, toldShare);
    const trouble = gridTrouble(grid);
    if (trouble) throw new InputFaults([{ file: file.name, path: '', ...trouble }]);
    tell({ kind: 'read', said: saidOf(grid) });
  } catch (fault) {
    const found = `can’t be read: ${fault instanceof Error ? fault.message : String(fault)}`;
    const own = { file: file.name, path: '', found, mend: 'choose the file again' };
    tell({ kind: 'refused', faults: fault instanceof InputFaults ? fault.faults : [own] });
  }
});

function saidOf(read: ElevationGrid): GridSaid {
  const { columns, rows, cellEastM, cellNorthM } = read;
  const extent = { columns, rows, cellEastM, cellNorthM };
  return { extent, ...factsOf(read), remarks: remarksOn(read), preview: previewOf(read, PREVIEW_CELLS) };
}
