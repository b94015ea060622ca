import { useEffect, useRef } from 'preact/hooks';
import type { HeightUnit } from '../../../core/elevation/esriGrid';
import { pieceFacts } from '../../../core/elevation/preview';
import { heightM, LEAST_SIDE_M, MOST_HOLES_SHARE, MOST_SIDE_M, widthM, windowTrouble } from '../../../core/elevation/window';
import { Segments } from '../../controls/Segments';
import { Slide } from '../../controls/Slide';
import { dropAnywhere } from '../../input/dropAnywhere';
import type { GridSaid } from '../../workers/elevationMessages';
import {
  closeElevation,
  fileFaults,
  laid,
  layShare,
  opened,
  piece,
  placePiece,
  readShare,
  takeElevation,
  takeUnit,
  unit,
  useGround,
} from './elevationState';
import { ReliefPicture } from './ReliefPicture';
import './ownGround.css';

const UNITS: readonly { readonly value: HeightUnit; readonly text: string }[] = [
  { value: 'metres', text: 'Metres' },
  { value: 'feet', text: 'Feet' },
];
const CELLS = [5, 10, 20].map((value) => ({ value, text: `${value} m` }));
const km = (m: number): string => (m / 1_000).toFixed(1);

/** Brings the ground of an elevation file in: choose or drop the file, choose a piece of it, lay the exercise on it. */
export function OwnGround() {
  const chooser = useRef<HTMLInputElement>(null);
  const now = opened.value;
  useEffect(() => dropAnywhere(([file]) => file && void takeElevation(file)), []);
  return (
    <div class="own-ground">
      <div class="desk-deeds">
        <button type="button" class={now ? '' : 'primary'} onClick={() => chooser.current?.click()}>
          {now ? 'Another file' : 'Choose an elevation file'}
        </button>
        {readShare.value !== null && (
          <button type="button" onClick={closeElevation}>
            Stop reading
          </button>
        )}
      </div>
      <input
        ref={chooser}
        hidden
        type="file"
        aria-label="Elevation file"
        accept=".asc,.txt,.grd,.tif,.tiff"
        onChange={(event) => {
          const file = event.currentTarget.files?.[0];
          event.currentTarget.value = '';
          if (file) void takeElevation(file);
        }}
      />
      {!now && (
        <p class="quiet">
          Or drop it anywhere on this page: a GeoTIFF (.tif) or an ESRI ASCII grid (.asc) of up to 40 MB, as surveys of the land hand them
          out. It is read on this device and sent nowhere. Take only ground whose terms let you hand it on.
        </p>
      )}
      <Going share={readShare.value} name="File read" />
      <div role="alert">
        {fileFaults.value.map(({ file, path, found, mend }) => (
          <p key={`${path}${found}`} class="own-fault">
            {file}: {path === '' ? '' : `${path}: `}
            {found}. <span class="quiet">Mend: {mend}.</span>
          </p>
        ))}
      </div>
      {fileFaults.value.length > 0 && <Units />}
      {now && <Piece said={now.said} name={now.file.name} />}
      <p role="status">{laid.value}</p>
    </div>
  );
}

function Piece({ said, name }: { readonly said: GridSaid; readonly name: string }) {
  const { extent, remarks } = said;
  const { sizeM, cellM } = piece.value;
  const trouble = windowTrouble(extent, piece.value);
  const room = Math.min(MOST_SIDE_M, Math.floor(Math.min(widthM(extent), heightM(extent)) / 100) * 100);
  return (
    <>
      <GridLine said={said} name={name} />
      <ReliefPicture said={said} name={name} />
      <PieceLine said={said} />
      <div class="desk-field desk-slide">
        <span class="desk-slide-name">
          Side of the piece
          <output class="number">
            {km(sizeM)}
            <span class="unit"> km</span>
          </output>
        </span>
        <Slide
          name="Side of the piece"
          value={sizeM}
          least={LEAST_SIDE_M}
          most={Math.max(room, LEAST_SIDE_M + 100)}
          step={100}
          marks={[]}
          keys="arrows"
          said={`${km(sizeM)} km`}
          onSet={(side) => placePiece({ sizeM: side })}
        />
      </div>
      <div class="desk-field">
        <span>Cells of the exercise</span>
        <Segments name="Cells of the exercise" choices={CELLS} chosen={cellM} onChoose={(cell) => placePiece({ cellM: cell })} />
      </div>
      <Units />
      {remarks.length > 0 && (
        <ul class="own-remarks quiet">
          {remarks.map((remark) => (
            <li key={remark}>{remark}</li>
          ))}
        </ul>
      )}
      {trouble && (
        <p class="own-fault" role="alert">
          {trouble}.
        </p>
      )}
      <Going share={layShare.value} name="Ground laid" />
      <button type="button" class="primary" disabled={trouble !== null || layShare.value !== null} onClick={() => void useGround()}>
        Use this ground
      </button>
    </>
  );
}

function Units() {
  return (
    <div class="desk-field">
      <span>Heights in the file</span>
      <Segments name="Heights in the file" choices={UNITS} chosen={unit.value} onChoose={takeUnit} />
    </div>
  );
}

function GridLine({ said: { extent, lowM, highM, holes }, name }: { readonly said: GridSaid; readonly name: string }) {
  const { columns, rows, cellEastM, cellNorthM } = extent;
  const metres = (m: number) => (m < 10 ? m.toFixed(1) : Math.round(m));
  return (
    <p class="own-grid">
      <b>{name}</b>: <span class="number">{km(widthM(extent))}</span> by <span class="number">{km(heightM(extent))}</span> km in{' '}
      <span class="number">{columns}</span> by <span class="number">{rows}</span> cells of <span class="number">{metres(cellEastM)}</span>{' '}
      by <span class="number">{metres(cellNorthM)}</span> m. Lowest <span class="number">{Math.round(lowM)}</span> m, highest{' '}
      <span class="number">{Math.round(highM)}</span> m{holes === 0 ? ', without a hole.' : ', '}
      {holes > 0 && (
        <>
          <span class="number">{holes}</span> cells without a height, hatched.
        </>
      )}
    </p>
  );
}

/** About what is in the piece, told again as it is moved. */
function PieceLine({ said }: { readonly said: GridSaid }) {
  const { lowM, highM, holesShare } = pieceFacts(said.preview, piece.value);
  const holes = Math.ceil(100 * holesShare);
  return (
    <p class="quiet" role="status">
      {lowM > highM ? (
        'The piece has no heights: move it.'
      ) : (
        <>
          The piece goes from about <span class="number">{Math.round(lowM)}</span> to <span class="number">{Math.round(highM)}</span> m
          {holes === 0 ? '.' : `; ${holes} % of it have no height${holesShare > MOST_HOLES_SHARE ? ', too many: move it.' : '.'}`}
        </>
      )}
    </p>
  );
}

function Going({ share, name }: { readonly share: number | null; readonly name: string }) {
  if (share === null) return null;
  return (
    <div
      class="layer-progress"
      role="progressbar"
      aria-label={name}
      aria-valuemin={0}
      aria-valuemax={100}
      aria-valuenow={Math.round(100 * share)}
    >
      <span style={{ width: `${100 * share}%` }} />
    </div>
  );
}
