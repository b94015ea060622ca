import { render } from 'preact';
import { useEffect, useRef } from 'preact/hooks';
import { heardRound } from '../../core/listening/air';
import { changed } from '../../core/listening/demonstrationDials';
import { PictureView } from '../soundRing/PictureView';
import { RingDrawing } from '../soundRing/RingDrawing';
import { ChartView } from './ChartView';
import { shown, still } from './roomState';

/**
 * The handout is worked out when it is printed; on the screen it would follow every turn of a knob for nothing. It is drawn at once,
 * in the event itself: the sheet goes to print before a change of state would have come through.
 */
export function Handout() {
  const place = useRef<HTMLDivElement>(null);
  useEffect(() => {
    const before = () => render(<Sheet />, place.current!);
    const after = () => render(null, place.current!);
    addEventListener('beforeprint', before);
    addEventListener('afterprint', after);
    return () => {
      removeEventListener('beforeprint', before);
      removeEventListener('afterprint', after);
    };
  }, []);
  return <div class="handout-place" ref={place} />;
}

/** One printed page, A4 or Letter: the ring at four gains, the scene, what to listen for, room for notes. Unseen on the screen. */
function Sheet() {
  const demonstration = shown.value;
  const listened = still.value;
  const { settings } = listened;
  return (
    <section class="handout" aria-hidden="true">
      <h1>{demonstration.title}</h1>
      <p class="handout-scene">{demonstration.scene}</p>
      <p>{demonstration.listenFor}</p>
      <div class="handout-rings">
        {demonstration.handoutGainsDb.map((gainDb) => {
          const at = changed(demonstration, settings, { gainDb });
          const air = demonstration.air(at);
          return (
            <figure key={gainDb}>
              <svg viewBox="-128 -128 256 256" role="img" aria-label={`Sound ring at ${gainDb} dB`}>
                <RingDrawing ring={heardRound(air, at)} other={null} waves={air.waves} />
              </svg>
              <figcaption>
                Gain <strong class="number">{gainDb}</strong> dB
              </figcaption>
            </figure>
          );
        })}
      </div>
      <p class="handout-key">
        Distance from the middle is loudness, the same scale in all four. Strong: heard. Pale: not heard. Ticks outside: flat out. Grey
        disc: hiss. Dashed arrow: where the wave really comes from.
      </p>
      <div class="handout-pair">
        <ChartView chart={demonstration.chart(listened)} />
        <PictureView picture={demonstration.picture(listened)} />
      </div>
      <ul class="handout-ask">
        {demonstration.talkingPoints.map((point) => (
          <li key={point}>{point}</li>
        ))}
      </ul>
      <p class="handout-small">
        {demonstration.caution ? `${demonstration.caution} ` : ''}Computed by Faintward with the radio, receiver and ear of its exercises.
        Local rules and the land’s owner come before anything printed here.
      </p>
    </section>
  );
}
