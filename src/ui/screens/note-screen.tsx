// One note of a pan through time: fundamental, octave and third in small charts, and the table beside them.
import { useLayoutEffect } from 'preact/hooks';
import type { RoundId } from '../../domain/records/rack-records';
import { readingsWithoutErased, withoutErased } from '../../domain/records/without-erased';
import { displayName } from '../../domain/tuning/note-names';
import { cents, type MidiNote } from '../../domain/tuning/units';
import { wishOf } from '../../domain/work/judge-note';
import { noteHistory } from '../../domain/work/note-history';
import { panAtAGlance } from '../../state/pan-at-a-glance';
import type { OpenPan } from '../../state/pan-model';
import type { PanScreenModels } from '../app-models';
import { KeptSounds } from '../parts/kept-sounds';
import { NoteCharts } from '../parts/note-charts';
import { NoteCourseTable } from '../parts/note-course-table';
import { NoteMarks } from '../parts/note-marks';
import { Instead, InTrouble, PanGate } from '../parts/pan-gate';
import { StandingMark } from '../parts/standing-mark';
import { addressOf } from '../route';
import type { ScreenProps } from '../screen-props';
import { words } from '../words';
import { benchWords } from '../words/bench-words';
import { historyWords } from '../words/history-words';
import { panWords } from '../words/pan-words';
import { rackWords } from '../words/rack-words';
import { standingWords } from '../words/standing-words';
import './note-screen.css';

export function NoteScreen({ models, route }: ScreenProps) {
  if (route.screen !== 'note') return null;
  return (
    <PanGate models={models}>
      {(pan) => <Loaded models={models} pan={pan} note={route.note} from={route.from ?? null} />}
    </PanGate>
  );
}

interface Props {
  readonly models: PanScreenModels;
  readonly pan: OpenPan;
  readonly note: MidiNote;
  /** The round whose result led here. */
  readonly from: RoundId | null;
}

function Loaded({ models, pan, note, from }: Props) {
  const model = models.note;
  // Before anything is painted: the readings of another note are still there.
  useLayoutEffect(() => void model.read(pan.id, note), [model, pan, note]);
  const view = model.view.value;
  switch (view.kind) {
    case 'loading':
      return <Instead text={rackWords.reading} tone="hint" />;
    case 'trouble':
      return <InTrouble trouble={view.trouble} onRetry={() => void model.read(pan.id, note)} />;
    case 'ready':
      return <Shown models={models} pan={pan} note={note} from={from} />;
  }
}

function Shown({ models, pan, note, from }: Props) {
  const view = models.note.view.value;
  const { fields } = pan.current;
  const judging = models.settings.judging.value;
  const readings = readingsWithoutErased(
    view.kind === 'ready' ? view.readings : [],
    pan.records.erasures,
  );
  const points = noteHistory(readings, withoutErased(pan.records).rounds, {
    a4: fields.a4 ?? judging.a4,
    offset: wishOf(fields.layout, note).offset ?? cents(0),
  });
  const standing = panAtAGlance(pan, judging).notes.get(note);
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
      <NoteMarks records={pan.records} note={note} />
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
