// What blows have done on a pan, as a page that goes to the tuner on paper or as a file.
import { useLayoutEffect, useState } from 'preact/hooks';
import type { PlaceAnswer } from '../../../domain/advice/pan-answers';
import type { HandedOut } from '../../../domain/ports/file-handout';
import type { OpenPan } from '../../../state/pan/pan-model';
import { addressOf } from '../../frame/route';
import type { Needs } from '../../frame/screen-props';
import { fileName } from '../../parts/controls/csv-button';
import { PanGate } from '../../parts/gates/pan-gate';
import { ViewGate } from '../../parts/gates/view-gate';
import { answersPage } from '../../sheet/answers-page';
import { MarkupView } from '../../sheet/markup-view';
import '../../sheet/sheet.css';
import style from '../../sheet/sheet.css?inline';
import { pageFile } from '../../sheet/sheet-file';
import { dayWords } from '../../words/day-words';
import { resultWords } from '../../words/result-words';
import { answersWords } from '../../words/tuner/answers-words';
import { sheetWords } from '../../words/tuner/sheet-words';
import '../../parts/sheet/paper.css';

type Models = Needs<'pan' | 'answers' | 'now' | 'printer' | 'fileHandout'>;

export function AnswersScreen({ models }: { readonly models: Models }) {
  return <PanGate model={models.pan}>{(pan) => <Loaded models={models} pan={pan} />}</PanGate>;
}

interface Props {
  readonly models: Models;
  readonly pan: OpenPan;
}

function Loaded({ models, pan }: Props) {
  const { answers: model } = models;
  const read = (): void => {
    void model.read(pan.records);
  };
  useLayoutEffect(read, [model, pan.records]);
  return (
    <ViewGate view={model.view.value} onRetry={read}>
      {({ answers }) => <Shown models={models} pan={pan} answers={answers} />}
    </ViewGate>
  );
}

function Shown({ models, pan, answers }: Props & { readonly answers: readonly PlaceAnswer[] }) {
  const [madeAt] = useState(models.now);
  const { name } = pan.current.fields;
  const day = dayWords(madeAt);
  const page = answersPage(name, day, answers);
  return (
    <main class="screen with-paper answers" data-pan={pan.id}>
      <header class="top">
        <h1>{answersWords.title}</h1>
        <span>{name}</span>
      </header>
      {answers.length === 0 ? (
        <p class="hint">{answersWords.none}</p>
      ) : (
        <>
          <button type="button" class="main" onClick={() => models.printer.print()}>
            {answersWords.print}
          </button>
          <SaveButton
            onSave={() => {
              const file = models.fileHandout.textFile(
                fileName(answersWords.pageName(name, day)),
                'text/html',
                pageFile(name, page, style),
              );
              return models.fileHandout.handOut(file);
            }}
          />
          <div class="paper">
            <MarkupView markup={page} />
          </div>
        </>
      )}
      <footer class="actions">
        <a class="button" href={addressOf({ screen: 'pan', pan: pan.id })}>
          {resultWords.toPan}
        </a>
      </footer>
    </main>
  );
}

function SaveButton({ onSave }: { readonly onSave: () => Promise<HandedOut> }) {
  const [handed, setHanded] = useState<HandedOut | null>(null);
  return (
    <>
      <button type="button" onClick={() => void onSave().then(setHanded)}>
        {answersWords.save}
      </button>
      {handed && (
        <p class={handed === 'failed' ? 'hint warn' : 'hint'} role="status">
          {sheetWords.pageMade[handed]}
        </p>
      )}
    </>
  );
}
