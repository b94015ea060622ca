import { useMemo } from 'preact/hooks';
import { wordsOfDigest } from '../../core/scenario/digestWords';
import { QR_BYTES } from '../../core/scenario/link';
import type { Scenario } from '../../core/scenario/schema';
import { digestOf } from '../../core/scenario/seal';
import { OwnFile } from '../controls/OwnFile';
import { PlainHttp } from '../PlainHttp';
import { exerciseFileName, saveFile } from '../saveFile';
import { canShareFiles, shareFile } from '../shareFile';
import { exerciseLink, fitsQr, onlyHere } from './exerciseLink';
import { LinkLine } from './LinkLine';
import { ownExercise } from './ownExercise';
import { QrPicture } from './QrPicture';
import './share.css';

type Choice = { readonly name: string; readonly scenario: Scenario };
type Wanted = {
  readonly choices: readonly Choice[];
  /** The one that is shared; `own` is a person's own, another name none of these. */
  readonly name: string | null;
  readonly onChoose: (name: string) => void;
  readonly onBack: () => void;
};

/** One exercise for everybody in the room: as a code to point a phone at, as a link, as a file. */
export function Share({ choices, name, onChoose, onBack }: Wanted) {
  const own = ownExercise.value;
  const scenario = (name === 'own' ? own : choices.find((choice) => choice.name === name)?.scenario) ?? choices[0]?.scenario ?? own;
  return (
    <main class="share">
      <header class="share-head">
        <h1>Share an exercise</h1>
        <button type="button" onClick={onBack}>
          Start page
        </button>
      </header>
      <PlainHttp />
      <div class="share-columns">
        {scenario && <Shared scenario={scenario} />}
        <section class="share-choice" aria-label="Exercises">
          <h2>Another exercise</h2>
          <OwnFile
            words="Choose your own"
            onOpen={(opened) => {
              ownExercise.value = opened;
              onChoose('own');
            }}
          />
          <ul>
            {choices.map((choice) => (
              <li key={choice.name}>
                <button
                  type="button"
                  class="share-line"
                  aria-pressed={choice.scenario === scenario}
                  onClick={() => {
                    onChoose(choice.name);
                    scrollTo(0, 0);
                  }}
                >
                  <span>{choice.scenario.title}</span>
                  <span class="quiet">level {choice.scenario.level}</span>
                </button>
              </li>
            ))}
          </ul>
        </section>
      </div>
    </main>
  );
}

function Shared({ scenario }: { readonly scenario: Scenario }) {
  const { link, words } = useMemo(() => ({ link: exerciseLink(scenario), words: wordsOfDigest(digestOf(scenario)) }), [scenario]);
  const text = () => `${JSON.stringify(scenario, null, 2)}\n`;
  const file = exerciseFileName(scenario.title);
  return (
    <section class="share-one" aria-label={scenario.title}>
      <div class="share-code">
        {link && fitsQr(link) ? (
          <QrPicture text={link} name={`QR code of the exercise ${scenario.title}`} />
        ) : (
          <p class="share-no-code">
            Too much for a QR code that a phone reads across a room:{' '}
            <span class="number">{link ? link.length.toLocaleString('en-GB') : 'more'}</span>{' '}
            {link ? `of ${QR_BYTES} bytes. Give the link or the file.` : 'than a link holds. Give the file.'}
          </p>
        )}
      </div>
      <div class="share-ways">
        <h2>{scenario.title}</h2>
        <p class="share-words" role="status">
          {words}
        </p>
        <p class="quiet">Read these four words out: whoever has the same four has the same exercise, to the letter.</p>
        {link && <LinkLine link={link} title={scenario.title} />}
        {onlyHere() && (
          <p class="share-only-here">
            This address is this machine’s own: other devices can’t open the link or the code. Serve the program under a name that they
            reach, or give the file.
          </p>
        )}
        <div class="share-deeds">
          <button type="button" onClick={() => saveFile(file, text())}>
            Save the file
          </button>
          {canShareFiles() && (
            <button type="button" onClick={() => void shareFile(scenario.title, file, text())}>
              Send the file …
            </button>
          )}
        </div>
        <p class="quiet">Nothing is sent anywhere by this page: the whole exercise is in the code, in the link after the #, in the file.</p>
      </div>
    </section>
  );
}
