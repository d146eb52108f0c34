// How a round found the pan: the map, its pitch, the worst notes first, the partners that beat, the readings.
import { knockSigns } from '../../../domain/knock-check/round-signs';
import type { FileHandout } from '../../../domain/ports/file-handout';
import type { RoundStart } from '../../../domain/records/rack-records';
import type { RoundResult } from '../../../domain/rounds/round-result';
import { roundCsv } from '../../../domain/tables/round-csv';
import type { Reference } from '../../../domain/tuning/reference';
import type { OpenPan } from '../../../state/pan/pan-model';
import type { ResultsModel } from '../../../state/pan/results-model';
import type { SettingsModel } from '../../../state/settings/settings-model';
import { dayWords } from '../../words/day-words';
import { headlineWords, referenceMissing, resultWords } from '../../words/result-words';
import { ChoiceBar } from '../controls/choice-bar';
import { CsvButton } from '../controls/csv-button';
import { Explained } from '../controls/explained';
import { NoteRows } from '../drawing/note-rows';
import { StandingMap } from '../drawing/standing-map';
import { BeatRows } from './beat-rows';
import { Headline, PanPitchLine } from './pan-pitch';
import { QuickVerdicts } from './quick-verdicts';

const references: readonly Reference[] = ['band', 'pan'];

export function ResultNow({
  settings,
  results,
  handout,
  pan,
  start,
  result,
}: {
  readonly settings: Pick<SettingsModel, 'reference' | 'limits' | 'set'>;
  readonly results: Pick<ResultsModel, 'view'>;
  readonly handout: FileHandout;
  readonly pan: OpenPan;
  readonly start: RoundStart;
  readonly result: RoundResult;
}) {
  const { fields } = pan.current;
  const notes = new Map(result.notes.map((each) => [each.note, each]));
  const others = result.notes.filter((each) => !result.worst.includes(each));
  return (
    <>
      <StandingMap
        pan={pan.id}
        from={result.round}
        layout={fields.layout}
        notes={notes}
        standings={result.standings}
      />
      <section class="rows">
        <Headline {...headlineWords(result.standings)} />
        <PanPitchLine result={result} />
        <ChoiceBar
          legend={resultWords.judgedAgainst}
          values={references}
          labels={resultWords.references}
          chosen={settings.reference.value}
          onChoose={(reference) => settings.set({ reference })}
        />
        {settings.reference.value !== result.reference && <p class="hint">{referenceMissing}</p>}
      </section>
      {result.notes.some(({ reason }) => reason.kind === 'walking') && (
        <Explained words={['walking']} />
      )}
      {result.way === 'quick' && <QuickVerdicts pan={pan.id} result={result} />}
      <section class="rows">
        <h2>{resultWords.worstFirst}</h2>
        {result.worst.length === 0 && <p class="quiet">{resultWords.allGood}</p>}
        <NoteRows pan={pan.id} from={result.round} notes={result.worst} />
        {others.length > 0 && (
          <details>
            <summary>{resultWords.otherNotes(others.length)}</summary>
            <NoteRows pan={pan.id} from={result.round} notes={others} />
          </details>
        )}
      </section>
      <section class="rows">
        <h2>{resultWords.partnersTitle}</h2>
        <BeatRows beats={result.beats} />
      </section>
      <CsvButton
        handout={handout}
        name={resultWords.tableName(fields.name, dayWords(result.at))}
        text={() => {
          const view = results.view.peek();
          const readings = view.kind === 'open' ? view.readings : new Map();
          const { highestWithPartials } = settings.limits.value;
          const heard = knockSigns(pan.records, readings, highestWithPartials);
          return roundCsv([start], readings, fields, result.a4, heard);
        }}
      />
    </>
  );
}
