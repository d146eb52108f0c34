// The sheet for the tuner: what is wanted is typed, the page is shown as it will be printed, and goes out in four ways.
import { useMemo, useState } from 'preact/hooks';
import { knockSigns, type ReadingsByRound } from '../../../domain/knock-check/round-signs';
import { roundOf } from '../../../domain/records/rack-records';
import { panNow } from '../../../domain/rounds/pan-now';
import type { RoundResult } from '../../../domain/rounds/round-result';
import { makeSheet, type SheetRounds, sheetRounds } from '../../../domain/sheet/make-sheet';
import type { Sheet } from '../../../domain/sheet/sheet';
import { roundCsv } from '../../../domain/tables/round-csv';
import type { OpenPan } from '../../../state/pan/pan-model';
import { addressOf } from '../../frame/route';
import type { Needs } from '../../frame/screen-props';
import { minutesAhead } from '../../frame/typed-moment';
import { CsvButton } from '../../parts/controls/csv-button';
import { usePictureAddress } from '../../parts/controls/use-picture-address';
import { NotKept } from '../../parts/gates/not-kept';
import { PanGate } from '../../parts/gates/pan-gate';
import { RoundsGate, resultIn } from '../../parts/gates/rounds-gate';
import { RequestForm } from '../../parts/sheet/request-form';
import { SavePageButton } from '../../parts/sheet/save-page-button';
import { MarkupView } from '../../sheet/markup-view';
import { sheetPage } from '../../sheet/sheet-page';
import '../../sheet/sheet.css';
import { dayWords } from '../../words/day-words';
import { panWords } from '../../words/pan-words';
import { resultWords } from '../../words/result-words';
import { sheetWords } from '../../words/tuner/sheet-words';
import { tunedWords } from '../../words/tuner/tuned-words';
import '../../parts/sheet/paper.css';

type Models = Needs<'pan' | 'results' | 'settings' | 'now' | 'printer' | 'fileHandout'>;

export function SheetScreen({ models }: { readonly models: Models }) {
  return <PanGate model={models.pan}>{(pan) => <Loaded models={models} pan={pan} />}</PanGate>;
}

interface Props {
  readonly models: Models;
  readonly pan: OpenPan;
}

function Loaded({ models, pan }: Props) {
  const rounds = useMemo(() => sheetRounds(pan.records), [pan.records]);
  const { shown, before, knock } = rounds;
  const wanted = [...new Set([shown, before, ...knock])].filter((round) => round !== null);
  return (
    <RoundsGate results={models.results} pan={pan} rounds={wanted}>
      {(read) => (
        <Shown
          models={models}
          pan={pan}
          rounds={rounds}
          before={resultIn(read, before)}
          readings={read.readings}
        />
      )}
    </RoundsGate>
  );
}

function Shown({
  models,
  pan,
  rounds,
  before,
  readings,
}: Props & {
  readonly rounds: SheetRounds;
  readonly before: RoundResult | null;
  readonly readings: ReadingsByRound;
}) {
  const { settings, now } = models;
  const { fields } = pan.current;
  const [madeAt] = useState(now);
  const { highestWithPartials } = settings.limits.value;
  const heard = useMemo(
    () => knockSigns(pan.records, readings, highestWithPartials),
    [pan.records, readings, highestWithPartials],
  );
  const judging = settings.judging.value;
  const standing = useMemo(() => {
    const ofRound = rounds.shown ? (readings.get(roundOf(rounds.shown)) ?? []) : [];
    return panNow(rounds.shown, [...ofRound, ...pan.outside], pan.records, judging);
  }, [rounds, readings, pan, judging]);
  const shown = standing.base;
  const sheet: Sheet = makeSheet({
    records: pan.records,
    rounds,
    standing,
    before,
    heard,
    judging,
    contact: settings.contact.value,
    now: madeAt,
  });
  const photo = usePictureAddress(pan.photo?.bytes ?? null);
  return (
    <main class="screen with-paper sheet-page" data-pan={pan.id}>
      <header class="top">
        <h1>{sheetWords.title}</h1>
        <span>{fields.name}</span>
      </header>
      {!shown && (
        <div class="hint">
          <p>{sheetWords.noRound}</p>
          <a class="button" href={addressOf({ screen: 'begin', pan: pan.id })}>
            {sheetWords.startRound}
          </a>
        </div>
      )}
      <RequestForm model={models.pan} settings={settings} pan={pan} />
      <NotKept keeper={models.pan} />
      <button type="button" class="main" onClick={() => models.printer.print()}>
        {sheetWords.print}
      </button>
      <SavePageButton handout={models.fileHandout} sheet={sheet} photo={pan.photo?.bytes ?? null} />
      {shown && (
        <CsvButton
          handout={models.fileHandout}
          name={resultWords.tableName(fields.name, dayWords(shown.at))}
          text={() =>
            rounds.shown
              ? roundCsv([rounds.shown], readings, fields, standing.a4, { heard, minutesAhead })
              : ''
          }
        />
      )}
      <a class="button" href={addressOf({ screen: 'send', pan: pan.id })}>
        {panWords.send}
      </a>
      <a class="button" href={addressOf({ screen: 'tuned', pan: pan.id })}>
        {tunedWords.title}
      </a>
      <h2>{sheetWords.preview}</h2>
      <div class="paper">
        <MarkupView markup={sheetPage(sheet, photo)} />
      </div>
      <footer class="actions">
        <a class="button" href={addressOf({ screen: 'pan', pan: pan.id })}>
          {resultWords.toPan}
        </a>
      </footer>
    </main>
  );
}
