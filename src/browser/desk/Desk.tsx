import { useSignal } from '@preact/signals';
import { useEffect } from 'preact/hooks';
import type { Scenario } from '../../core/scenario/schema';
import { Segments } from '../controls/Segments';
import { exerciseFileName, saveFile } from '../saveFile';
import { DeskMap } from './DeskMap';
import { deeds, draft, faults, fetched, layDown, panel, redo, sound, tendDesk, undo, unkept } from './deskState';
import { ExercisePanel } from './ExercisePanel';
import { closeElevation } from './elevation/elevationState';
import { GroundPanel } from './GroundPanel';
import { KitPanel } from './KitPanel';
import { NewExercise } from './NewExercise';
import { RehearsePanel } from './RehearsePanel';
import { ThingsPanel } from './ThingsPanel';
import './desk.css';

type Doors = {
  readonly lessons: Readonly<Record<Scenario['lesson'], string>>;
  readonly shipped: readonly { readonly name: string; readonly scenario: Scenario }[];
  readonly onWalk: (scenario: Scenario) => void;
  readonly onShare: (scenario: Scenario) => void;
  readonly onBack: () => void;
};

const PANELS = [
  { value: 'exercise', text: 'Exercise' },
  { value: 'ground', text: 'Ground' },
  { value: 'things', text: 'Map', said: 'On the map' },
  { value: 'kit', text: 'Kit' },
  { value: 'rehearse', text: 'Rehearse' },
] as const;

/** Where exercises are made, tested and shared. */
export function Desk({ lessons, shipped, onWalk, onShare, onBack }: Doors) {
  const beginning = useSignal(false);
  useEffect(() => tendDesk(), []);
  useEffect(() => closeElevation, []);
  useEffect(() => {
    addEventListener('keydown', undoKeys);
    return () => removeEventListener('keydown', undoKeys);
  }, []);
  const scenario = draft.value;
  if (!fetched.value && !scenario) return <main class="desk" aria-busy="true" />;
  const fresh = !scenario || beginning.value;
  return (
    <main class="desk">
      <header class="desk-head">
        <h1>Course desk</h1>
        {scenario && <HeadDeeds onWalk={onWalk} onShare={onShare} onNew={() => (beginning.value = !beginning.value)} fresh={fresh} />}
        <button type="button" onClick={onBack}>
          Start page
        </button>
      </header>
      {unkept.value && (
        <p class="desk-unkept" role="alert">
          This browser keeps nothing: save the file before you close the page.
        </p>
      )}
      {fresh ? (
        <NewExercise
          lessons={lessons}
          shipped={shipped}
          onNew={(made, deed) => {
            layDown(made, deed);
            beginning.value = false;
          }}
        />
      ) : (
        <div class="desk-work">
          <DeskMap />
          <section class="desk-panel" aria-label="Settings of the exercise">
            <Segments
              name="Part of the exercise"
              choices={PANELS}
              chosen={panel.value}
              onChoose={(value) => {
                panel.value = value;
              }}
            />
            <FaultLine />
            <div class="desk-panel-body">
              {panel.value === 'exercise' && <ExercisePanel lessons={lessons} />}
              {panel.value === 'ground' && <GroundPanel />}
              {panel.value === 'things' && <ThingsPanel />}
              {panel.value === 'kit' && <KitPanel />}
              {panel.value === 'rehearse' && <RehearsePanel lessons={lessons} />}
            </div>
          </section>
        </div>
      )}
    </main>
  );
}

type HeadWanted = Pick<Doors, 'onWalk' | 'onShare'> & { readonly onNew: () => void; readonly fresh: boolean };

function HeadDeeds({ onWalk, onShare, onNew, fresh }: HeadWanted) {
  const { undo: back, redo: again } = deeds.value;
  const ready = sound.value;
  return (
    <>
      <p class="desk-title">{draft.value!.title}</p>
      <div class="desk-deeds">
        <button type="button" disabled={back === null} title={back === null ? 'Nothing to undo' : `Undo: ${back} (Ctrl Z)`} onClick={undo}>
          Undo
        </button>
        <button
          type="button"
          disabled={again === null}
          title={again === null ? 'Nothing to redo' : `Redo: ${again} (Ctrl Y)`}
          onClick={redo}
        >
          Redo
        </button>
        <button type="button" aria-pressed={fresh} onClick={onNew}>
          New …
        </button>
        <button type="button" disabled={!ready} onClick={() => onWalk(ready!)}>
          Walk it
        </button>
        <button type="button" disabled={!ready} onClick={() => onShare(ready!)}>
          Share
        </button>
        <button type="button" onClick={() => saveFile(exerciseFileName(draft.value!.title), `${JSON.stringify(draft.value, null, 2)}\n`)}>
          Save the file
        </button>
      </div>
    </>
  );
}

/** How many faults there are and where the first one is: each is told in full at its field. */
function FaultLine() {
  const first = faults.value[0];
  if (!first) return <p class="desk-fault-line quiet">Without fault; kept on this device.</p>;
  const count = faults.value.length;
  return (
    <p class="desk-fault-line desk-fault-some" role="status">
      {count === 1 ? 'One fault' : `${count} faults`}: {panelName(first.path)}
    </p>
  );
}

function panelName(path: string): string {
  if (/^(tags|start|ground\.(buildings|powerLines))/.test(path)) return 'see “On the map”';
  if (/^(ground|radio|seed)/.test(path)) return 'see “Ground”';
  return /^(kit|aids|companion)/.test(path) ? 'see “Kit”' : 'see “Exercise”';
}

/** Everywhere on the desk: also in a text, where the desk knows the words before. */
function undoKeys(event: KeyboardEvent): void {
  if (!(event.ctrlKey || event.metaKey) || event.altKey) return;
  const key = event.key.toLowerCase();
  if (key === 'y' || (key === 'z' && event.shiftKey)) redo();
  else if (key === 'z') undo();
  else return;
  event.preventDefault();
}
