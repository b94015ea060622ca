import { effect, useSignal } from '@preact/signals';
import { useEffect, useMemo, useRef } from 'preact/hooks';
import type { Debriefing } from '../../core/debrief/debriefing';
import { bestAndWorst, farthestApart, mattersMost } from '../../core/debrief/moments';
import { TICKS_PER_S } from '../../core/run/state';
import { resultOf } from '../../core/technique/grade';
import { HABIT_IDS } from '../../core/technique/habit';
import { Key } from '../controls/Key';
import { live, type OpenRun } from '../currentRun';
import type { About } from '../finishedRun';
import { UnkeptNote } from '../KeepNote';
import { runFileName, saveFile } from '../saveFile';
import { canShareFiles, shareFile } from '../shareFile';
import { unlockSound } from '../sound/unlock';
import { noteFinished } from '../storage/finishedRuns';
import { openSurvey } from '../workers/openSurvey';
import { BearingsPart } from './BearingsPart';
import type { Doors } from './Debrief';
import { DistancePart } from './DistancePart';
import { debriefKeys } from './debriefKeys';
import { endingWords } from './endingWords';
import { FixPart } from './FixPart';
import { GainCard } from './GainCard';
import { GainPart } from './GainPart';
import { BarKey, HabitLines } from './HabitLines';
import { HABIT_NAMES, unbroken } from './habitWords';
import { InstructorPart } from './InstructorPart';
import { MomentList } from './MomentList';
import { MomentSlip } from './MomentSlip';
import { DebriefMap } from './map/DebriefMap';
import { askForLayer, beginLayers, layersOpen, onMap } from './map/layers';
import { OutcomeNumbers } from './OutcomeNumbers';
import { Part } from './Part';
import { RuledOutPart } from './RuledOutPart';
import { beginReplay, type ChosenMoment, choose, chosenBearing, chosenMoment, runReplay } from './replay';
import { Scrubber } from './Scrubber';
import { StagesPart } from './StagesPart';
import { SteadyPart } from './SteadyPart';
import { TagCheckPart } from './TagCheckPart';

type Wanted = Doors & { readonly open: OpenRun; readonly about: About; readonly debriefing: Debriefing };

/** The grade: the sentence that matters most, five habits and the map; all else lies below. */
export function Verdict(wanted: Wanted) {
  const { open, about, debriefing, runFileText, openSound, sound, onGraded, ScoreCode, onAgain, onOther } = wanted;
  const { scenario, world } = open.exercise;
  const { grade, timeline, poses, bearings } = debriefing;
  const withInstructor = debriefing.end.interventions.length > 0;
  const steady = useSignal<Debriefing | null>(null);
  const mapPart = useRef<HTMLElement>(null);
  const moments = useMemo(() => momentsInTime(debriefing), [debriefing]);
  const tag = useMemo(() => mostHeardTag(debriefing), [debriefing]);
  useMemo(() => {
    beginReplay(poses);
    beginLayers();
  }, [debriefing]);
  const showMap = () => mapPart.current?.scrollIntoView({ block: 'nearest', behavior: calm() ? 'auto' : 'smooth' });
  useEffect(() => {
    const survey = openSurvey(scenario, world);
    const stops = [
      survey.close,
      effect(() => askForLayer(survey, { tag, timeS: debriefing.end.tick / TICKS_PER_S })),
      runReplay(open.exercise, poses, live.peek()!, sound),
      debriefKeys(timeline, moments, () => {
        layersOpen.value = !layersOpen.peek();
      }),
      effect(() => {
        if (chosenMoment.value || chosenBearing.value !== null) showMap();
      }),
    ];
    return () => {
      for (const stop of stops) stop();
    };
  }, [debriefing]);
  useEffect(() => {
    const { technique, outcome } = grade;
    const entry = onGraded(grade);
    if (about.key !== null)
      void noteFinished(about.key, { outcome: { technique, found: outcome.found, timeS: outcome.timeS }, ...(entry ? { entry } : {}) });
  }, [debriefing, about.key]);
  const most = mattersMost(grade.habits);
  const ended = endingWords(scenario, grade.outcome);
  const habitsOfSteady = steady.value && Object.fromEntries(HABIT_IDS.map((id) => [id, steady.value!.grade.habits[id].score]));
  return (
    <main class="debrief">
      <UnkeptNote onSave={() => saveFile(runFileName(scenario.title), runFileText(resultOf(grade)))} />
      <div class="debrief-first">
        <header class="debrief-head">
          <p class="label">
            Debrief: {scenario.title}
            {about.name && `, ${about.name}`}
          </p>
          <h1 class="debrief-sentence">{unbroken(most.sentence)}</h1>
          {ended && <p class="debrief-because">{ended}</p>}
          {most.because && <p class="debrief-because">{unbroken(most.because)}</p>}
        </header>
        <section class="debrief-habits" aria-label="The five habits">
          <div class="technique">
            <h2>Technique</h2>
            <p class="technique-score number">
              {grade.technique === null ? (
                <span class="quiet">not ranked: fewer than three habits shown</span>
              ) : (
                Math.round(grade.technique)
              )}
            </p>
          </div>
          <HabitLines habits={grade.habits} ratings={about.ratings ?? {}} steady={habitsOfSteady} />
          <BarKey ratings={about.ratings ?? {}} hasSteady={steady.value !== null} />
          <SeenOneself {...wanted} />
        </section>
        <section class="debrief-map" aria-label="Map" ref={mapPart} tabIndex={-1}>
          <DebriefMap open={open} debriefing={debriefing} steady={steady.value} />
          <MomentSlip moments={moments} holder={mapPart} />
        </section>
      </div>
      <Scrubber
        timeline={timeline}
        moments={moments}
        bearings={bearings}
        onPlay={() => {
          unlockSound();
          openSound();
        }}
      />
      <div class="debrief-rest">
        <section class="debrief-outcome" aria-label="Outcome">
          <OutcomeNumbers outcome={grade.outcome} aided={about.aided} withInstructor={withInstructor} />
          <div class="debrief-deeds">
            <button type="button" class="primary" onClick={onAgain}>
              Again
            </button>
            <button type="button" onClick={onOther}>
              Other exercise
            </button>
            <button type="button" onClick={() => saveFile(runFileName(scenario.title), runFileText(resultOf(grade)))}>
              Save run file
            </button>
            {canShareFiles() && (
              <button
                type="button"
                onClick={() => void shareFile(`Run of ${scenario.title}`, runFileName(scenario.title), runFileText(resultOf(grade)))}
              >
                Send run file …
              </button>
            )}
          </div>
        </section>
        <Part title="Score card" lead="What this run came to, for the camera of another phone. It is not checked there.">
          <ScoreCode scenario={scenario} grade={grade} about={{ ...about, withInstructor }} />
        </Part>
        <Part title="Moments" lead="The two best and the two worst of each habit. A press takes map, charts and sound there.">
          <MomentList habits={grade.habits} />
        </Part>
        <Part
          title="Gain, loudness and heading"
          lead="What you heard and did, and what was so. A press on a chart takes the scrubber there."
        >
          <GainPart timeline={timeline} poses={poses} />
        </Part>
        <Part title="Bearings" lead="Each against the truth, and the waves that made it.">
          <BearingsPart rows={bearings} />
        </Part>
        <Part title="The fix" lead="What your bearings said of the place, as the notebook stood at the scrubber’s time.">
          <FixPart
            debriefing={debriefing}
            onShow={() => {
              choose(null);
              onMap.value = { ...onMap.peek(), fix: true };
              showMap();
            }}
          />
        </Part>
        {debriefing.tagCheck && (
          <Part title="Tag check" lead="What was done with the tag before leaving. It is not graded.">
            <TagCheckPart judged={debriefing.tagCheck} />
          </Part>
        )}
        {scenario.stages && (
          <Part title="Parts" lead="Each text that came on the way, when it came, and what was walked for it.">
            <StagesPart scenario={scenario} end={debriefing.end} />
          </Part>
        )}
        {debriefing.end.interventions.length > 0 && (
          <Part
            title="The instructor"
            lead="What was done to this run from the instructor’s window. Grade and charts know of it; survey pictures show the exercise as it is written."
          >
            <InstructorPart state={debriefing.end} tags={scenario.tags} />
          </Part>
        )}
        {debriefing.ruledOut && (
          <Part title="Ground ruled out" lead="Where you said the tag can’t be, and where that could have been said. It is not graded.">
            <RuledOutPart judged={debriefing.ruledOut} scenario={scenario} onShow={showMap} />
          </Part>
        )}
        <Part title="Gain and distance" lead="At which gain the beep was just heard, by how far the tag was.">
          <DistancePart gain={debriefing.gainDistance} />
        </Part>
        <Part title="The steady walker" lead="The same exercise by the built-in expert.">
          <SteadyPart open={open} own={debriefing} steady={steady} onShow={showMap} />
        </Part>
        <p class="quiet debrief-keys">
          Keys: <kbd>Space</kbd> play · <Key name="←" /> <Key name="→" /> 5 s, with Shift 30 s · <kbd>,</kbd> <kbd>.</kbd> beep by beep ·{' '}
          <kbd>[</kbd> <kbd>]</kbd> moment by moment · <kbd>L</kbd> layers
        </p>
      </div>
      <GainCard gain={debriefing.gainDistance} scenario={scenario} tag={tag} />
    </main>
  );
}

/** Where self-rating and grade lie far apart, that too is said. */
function SeenOneself({ about, debriefing }: Wanted) {
  const apart = about.ratings && farthestApart(debriefing.grade.habits, about.ratings);
  if (!apart) return null;
  const { habit, over } = apart;
  return (
    <p class="quiet seen-oneself">
      You rated <i>{HABIT_NAMES[habit].toLowerCase()}</i> {over ? 'higher' : 'lower'} than the run shows.
    </p>
  );
}

const calm = (): boolean => matchMedia('(prefers-reduced-motion: reduce)').matches;

/** All moments that have a place in the run, in time order: what the scrubber marks and the keys step through. */
function momentsInTime({ grade }: Debriefing): readonly ChosenMoment[] {
  const all = HABIT_IDS.filter((id) => id !== 'keepPractising').flatMap((habit) => {
    const { best, worst } = bestAndWorst(grade.habits[habit]);
    return [...best, ...worst].map((moment) => ({ habit, moment }));
  });
  return all.sort((a, b) => a.moment.fromS - b.moment.fromS);
}

function mostHeardTag({ timeline }: Debriefing): number {
  const counts = new Map<number, number>();
  for (const one of timeline.tag) counts.set(one, (counts.get(one) ?? 0) + 1);
  return [...counts].sort((a, b) => b[1] - a[1])[0]?.[0] ?? 0;
}
