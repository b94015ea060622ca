import { useSignal } from '@preact/signals';
import { packedCard, scoreCardOf } from '../../core/club/scoreCard';
import type { CardedRun } from '../finishedRun';
import { CardFace } from './CardFace';
import { fitsQr, onlyHere } from './exerciseLink';
import { LinkLine } from './LinkLine';
import { QrPicture } from './QrPicture';
import './share.css';
import './scoreCard.css';

/** A run's score card, drawn when it is asked for. */
export function ScoreCode(run: CardedRun) {
  const shown = useSignal(false);
  return (
    <>
      <button
        type="button"
        class="score-show"
        aria-expanded={shown.value}
        onClick={() => {
          shown.value = !shown.value;
        }}
      >
        {shown.value ? 'Hide the code' : 'Show the code'}
      </button>
      {shown.value && <CodeOf {...run} />}
    </>
  );
}

/** As a code for another phone's camera, with the same as a link and in words. */
function CodeOf({ scenario, grade, about }: CardedRun) {
  const card = scoreCardOf(scenario, grade, about);
  const link = `${location.origin}${location.pathname}#/card/${packedCard(card)}`;
  return (
    <div class="score-code">
      {fitsQr(link) ? (
        <QrPicture text={link} name={`QR code of the score card of ${card.name.trim() || 'this run'}`} />
      ) : (
        <p class="share-no-code">The names are too long for a code. Give the link.</p>
      )}
      <div class="share-ways">
        <CardFace card={card} />
        <p class="quiet">
          Whoever points a phone at the code reads this card. It says what this device says: for a place in the club table, where each run
          is replayed, give the run file.
        </p>
        {onlyHere() && <p class="share-only-here">This address is this machine’s own: other devices can’t open the code.</p>}
        <LinkLine link={link} title={`Score card: ${card.title}`} />
      </div>
    </div>
  );
}
