// One note of a pan through time: fundamental, octave and third in small charts, and the table beside them.
import { useLayoutEffect } from 'preact/hooks';
import { wishOf } from '../../../domain/reading/judge-note';
import type { ReadingRecord, RoundId } from '../../../domain/records/rack-records';
import {
  readingsWithoutErased,
  withoutErased,
} from '../../../domain/records/standing/without-erased';
import { noteHistory } from '../../../domain/rounds/note-history';
import { displayName } from '../../../domain/tuning/note-names';
import { cents, type MidiNote } from '../../../domain/tuning/units';
import { panAtAGlance } from '../../../state/pan/pan-at-a-glance';
import type { OpenPan } from '../../../state/pan/pan-model';
import { addressOf } from '../../frame/route';
import type { Needs, ScreenProps } from '../../frame/screen-props';
import { NoteCharts } from '../../parts/charts/note-charts';
import { NoteCourseTable } from '../../parts/charts/note-course-table';
import { StandingMark } from '../../parts/drawing/standing-mark';
import { PanGate } from '../../parts/gates/pan-gate';
import { ViewGate } from '../../parts/gates/view-gate';
import { KeptSounds } from '../../parts/listen/kept-sounds';
import { TargetToneButtons } from '../../parts/listen/target-tone-buttons';
import { NoteMarks } from '../../parts/pan/note-marks';
import { historyWords } from '../../words/history-words';
import { rowWords } from '../../words/list-words';
import { benchWords } from '../../words/measuring/bench-words';
import { nowWords, takenWords } from '../../words/now-words';
import { panWords } from '../../words/pan-words';
import { rackWords } from '../../words/rack-words';
import { standingWords } from '../../words/standing-words';
import { words } from '../../words/words';
import './note-screen.css';

type Models = Needs<'pan' | 'note' | 'settings' | 'player' | 'targetTone'>;

export function NoteScreen({ models, route }: ScreenProps<Models>) {
  if (route.screen !== 'note') return null;
  return (
    <PanGate model={models.pan}>
      {(pan) => <Loaded models={models} pan={pan} note={route.note} from={route.from ?? null} />}
    </PanGate>
  );
}

interface Props {
  readonly models: Models;
  readonly pan: OpenPan;
  readonly note: MidiNote;
  /** The round whose result led here. */
  readonly from: RoundId | null;
}

function Loaded({ models, pan, note, from }: Props) {
  const model = models.note;
  // Before anything is painted: the readings of another note are still there.
  useLayoutEffect(() => void model.read(pan.id, note), [model, pan, note]);
  return (
    <ViewGate view={model.view.value} onRetry={() => void model.read(pan.id, note)}>
      {({ readings }) => (
        <Shown models={models} pan={pan} note={note} from={from} kept={readings} />
      )}
    </ViewGate>
  );
}

function Shown({
  models,
  pan,
  note,
  from,
  kept,
}: Props & {
  /** All readings of the note, erased ones too. */
  readonly kept: readonly ReadingRecord[];
}) {
  const { fields } = pan.current;
  const judging = models.settings.judging.value;
  const readings = readingsWithoutErased(kept, pan.records.erasures);
  const points = noteHistory(readings, withoutErased(pan.records).rounds, {
    a4: fields.a4 ?? judging.a4,
    offset: wishOf(fields.layout, note).offset ?? cents(0),
  });
  const glance = panAtAGlance(pan, judging);
  const standing = glance.notes.find((each) => each.note === note);
  return (
    <main class="screen note-page" data-note={note}>
      <header class="top">
        <h1>{displayName(note)}</h1>
        <span>{historyWords.noteOnPan(fields.name)}</span>
      </header>
      {standing ? (
        <p class="note-standing">
          <StandingMark standing={standing.standing} />
          <b>{standingWords(standing)}</b>
          {standing.standing !== standingWords(standing) && (
            <span class="quiet">{rackWords.standings[standing.standing]}</span>
          )}
        </p>
      ) : (
        <p class="hint">{historyWords.notOnPan}</p>
      )}
      {standing && standing.takenIn !== null && (
        <p class="quiet note-taken" data-work={standing.work}>
          {rowWords([takenWords(standing), nowWords.work[standing.work]].filter(Boolean))}
        </p>
      )}
      <NoteMarks records={pan.records} note={note} />
      <TargetToneButtons
        tone={models.targetTone}
        note={note}
        wish={wishOf(fields.layout, note)}
        bandA4={fields.a4 ?? judging.a4}
        panA4={glance.panPitch?.a4 ?? null}
      />
      {points.length === 0 ? (
        <p class="hint">{historyWords.noteNever}</p>
      ) : (
        <>
          <NoteCharts points={points} limits={judging.limits} />
          <NoteCourseTable points={points} />
          <KeptSounds readings={readings} player={models.player} />
        </>
      )}
      <footer class="actions">
        <a
          class="button"
          href={addressOf(
            from === null
              ? { screen: 'pan', pan: pan.id }
              : { screen: 'result', pan: pan.id, round: from },
          )}
        >
          {words.back}
        </a>
        {pan.rounds.length > 0 && (
          <a class="button" href={addressOf({ screen: 'history', pan: pan.id })}>
            {panWords.history}
          </a>
        )}
        {standing && (
          <a class="button main" href={addressOf({ screen: 'bench', pan: pan.id, note })}>
            {benchWords.putOnBench}
          </a>
        )}
      </footer>
    </main>
  );
}
