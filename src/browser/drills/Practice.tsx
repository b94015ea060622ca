import { signal, useSignal } from '@preact/signals';
import { useEffect } from 'preact/hooks';
import type { Drill } from '../../core/drills/drill';
import type { SessionKind } from '../../core/drills/session';
import { listenerHere } from '../listenerHere';
import { BlindTest } from './BlindTest';
import { DrillList } from './DrillList';
import { DrillPage } from './DrillPage';
import { goTo, place } from './drillAddress';
import { HearingCheck } from './HearingCheck';

/** Somebody would not be checked now; asked again with the next visit, or once a check that was made after all holds no more. */
const later = signal(false);
const checked = (): void => {
  later.value = false;
};

/** The page of practice that the address names. */
export function Practice({ onLeave }: { readonly onLeave: () => void }) {
  const now = place.value;
  const toList = () => goTo('/drills');
  switch (now.page) {
    case 'list':
      return <DrillList onLeave={onLeave} />;
    case 'hearing-check':
      return (
        <HearingCheck
          asked={true}
          onDone={() => {
            checked();
            toList();
          }}
          onLater={toList}
        />
      );
    case 'blind-test':
      return <BlindTest onLeave={toList} />;
    case 'drill':
      return <CheckedFirst key={`${now.drill.id}/${now.kind}`} drill={now.drill} kind={now.kind} />;
  }
}

/** The hearing check comes before the first drill, and again where it does not hold any more. */
function CheckedFirst({ drill, kind }: { readonly drill: Drill; readonly kind: SessionKind }) {
  const due = useSignal<boolean | null>(null);
  useEffect(() => {
    void listenerHere().then((who) => {
      due.value = who.due;
    });
  }, []);
  if (due.value === null) return null;
  if (due.value && !later.value)
    return (
      <HearingCheck
        asked={false}
        onDone={() => {
          checked();
          due.value = false;
        }}
        onLater={() => {
          later.value = true;
        }}
      />
    );
  return <DrillPage drill={drill} kind={kind} />;
}
