import { computed, effect, signal } from '@preact/signals';
import { draftReader, faultsAt } from '../../core/desk/draft';
import { withField } from '../../core/desk/field';
import { changed, type History, historyFrom, historyOf, keptHistory, nextDeeds, redone, settled, undone } from '../../core/desk/history';
import { type Place, placesOf } from '../../core/desk/places';
import type { SetDownKind } from '../../core/desk/setDown';
import { groundFaults } from '../../core/run/soundness';
import type { Fault } from '../../core/scenario/faults';
import type { Scenario } from '../../core/scenario/schema';
import type { MapPoint } from '../../core/units/frames';
import { keepDesk, keptDesk } from '../storage/desk';
import { type Land, openLand } from '../workers/openLand';

/** What lies on the desk, with all it has been; `null` before anything was laid there. */
export const history = signal<History<Scenario> | null>(null);
/** Whether the shelf has been looked at: before that nobody knows if something lies on the desk. */
export const fetched = signal(false);
/** Why nothing is kept across a reload, where it is so. */
export const unkept = signal(false);

export const draft = computed<Scenario | null>(() => history.value?.now ?? null);
export const deeds = computed(() => (history.value ? nextDeeds(history.value) : { undo: null, redo: null }));

/** The ground of the draft, or of the draft before while a new one is made. */
export const land = signal<Land | null>(null);
export const landMaking = signal(false);
export const landFault = signal('');

const readNext = draftReader();
const read = computed(() => (draft.value ? readNext(draft.value) : { scenario: null, faults: [] }));
/** All faults there are: of the fields, and where those are sound, of the ground. */
export const faults = computed<readonly Fault[]>(() => {
  const { scenario, faults: inFields } = read.value;
  if (!scenario || !land.value || land.value.world.sizeM !== scenario.ground.sizeM) return inFields;
  return groundFaults('this exercise', scenario, land.value.world);
});
/** The draft as it can be walked and shared: none while it has faults. */
export const sound = computed<Scenario | null>(() => (faults.value.length === 0 ? read.value.scenario : null));

export const places = computed<readonly Place[]>(() => (draft.value ? placesOf(draft.value) : []));
/** The field of the thing that is chosen on the map. */
export const chosenPath = signal<string | null>(null);
export const chosen = computed<Place | null>(() => places.value.find(({ path }) => path === chosenPath.value) ?? null);
/** A place that was chosen from a list: the map goes there. */
export const lookAt = signal<MapPoint | null>(null);
/** What the next tap on the map sets down. */
export const inHand = signal<SetDownKind | null>(null);
/** The panel beside the map that is open. */
export const panel = signal<'exercise' | 'ground' | 'things' | 'kit' | 'truth' | 'rehearse'>('exercise');

/** Chooses a thing on the map and opens what is known of it. */
export function choose(path: string): void {
  chosenPath.value = path;
  panel.value = 'things';
}

/** Changes the draft by an edit; with `joins` it belongs to the step before while that is of the same thing. */
export function edit(deed: string, change: (scenario: Scenario) => Scenario, joins: string | null = null): void {
  const before = history.peek();
  if (before) history.value = changed(before, change(before.now), deed, joins);
}

export const setField = (path: string, value: unknown, deed: string, joins: string | null = null): void =>
  edit(deed, (scenario) => withField(scenario, path, value), joins);

/** Lays an exercise on the desk: a step like any other, so that the one before comes back by undo. */
export function layDown(scenario: Scenario, deed: string): void {
  const before = history.peek();
  history.value = before ? changed(before, scenario, deed) : historyOf(scenario);
  chosenPath.value = null;
  inHand.value = null;
  panel.value = 'exercise';
}

export function undo(): void {
  if (history.peek()) history.value = undone(history.peek()!);
}

export function redo(): void {
  if (history.peek()) history.value = redone(history.peek()!);
}

const KEEP_AFTER_MS = 300;
/** A slider left alone for so long begins a new step. */
const SETTLE_AFTER_MS = 1_500;
const GROUND_AFTER_MS = 200;

/** While the desk is open: fetches what lay on it, keeps every change, makes the ground anew. @returns stops; what waits is kept at once */
export function tendDesk(): () => void {
  let keepTimer = 0;
  let settleTimer = 0;
  let keepWaits = false;
  const keepNow = () => {
    window.clearTimeout(keepTimer);
    if (!keepWaits || !history.peek()) return;
    keepWaits = false;
    void keepDesk(keptHistory(history.peek()!)).then((kept) => {
      unkept.value = !kept;
    });
  };
  let lastKept: Scenario | null = history.peek()?.now ?? null;
  const stops = [
    effect(() => {
      const now = draft.value;
      if (!now || now === lastKept) return;
      lastKept = now;
      keepWaits = true;
      window.clearTimeout(keepTimer);
      keepTimer = window.setTimeout(keepNow, KEEP_AFTER_MS);
      window.clearTimeout(settleTimer);
      settleTimer = window.setTimeout(() => {
        history.value = settled(history.peek()!);
      }, SETTLE_AFTER_MS);
    }),
    tendGround(),
  ];
  if (!fetched.peek()) {
    void keptDesk().then((kept) => {
      if (kept && !history.peek()) {
        lastKept = kept.now;
        history.value = historyFrom(kept);
      }
      fetched.value = true;
    });
  }
  addEventListener('pagehide', keepNow);
  document.addEventListener('visibilitychange', keepNow);
  return () => {
    removeEventListener('pagehide', keepNow);
    document.removeEventListener('visibilitychange', keepNow);
    keepNow();
    window.clearTimeout(settleTimer);
    for (const stop of stops) stop();
  };
}

/** Makes the ground whenever its plan has changed and is without fault; a newer plan overtakes one that is still being made. */
function tendGround(): () => void {
  let timer = 0;
  let madeOf: readonly unknown[] = [];
  let wanted = 0;
  const make = (scenario: Scenario) => {
    const mine = ++wanted;
    landMaking.value = true;
    void openLand(scenario, () => {}).then(
      (made) => {
        if (mine !== wanted) return;
        landMaking.value = false;
        landFault.value = '';
        land.value = made;
      },
      (fault: unknown) => {
        if (mine !== wanted) return;
        landMaking.value = false;
        landFault.value = fault instanceof Error ? fault.message : String(fault);
      },
    );
  };
  const stop = effect(() => {
    const scenario = draft.value;
    if (!scenario || read.value.faults.some(({ path }) => path === '' || path === 'seed')) return;
    if (faultsAt(read.value.faults, 'ground').length > 0) return;
    const plan = [scenario.seed, scenario.ground];
    if (plan.every((part, i) => part === madeOf[i])) return;
    madeOf = plan;
    window.clearTimeout(timer);
    timer = window.setTimeout(() => make(scenario), land.peek() ? GROUND_AFTER_MS : 0);
  });
  return () => {
    stop();
    window.clearTimeout(timer);
    wanted++;
    landMaking.value = false;
  };
}
