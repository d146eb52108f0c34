// Beside the van: which pan was dropped? One on the rack, or one that is put there with the tap on its picture.
import { useEffect, useState } from 'preact/hooks';
import type { PanLayout } from '../../../domain/pans/layout';
import { builtInLayouts } from '../../../domain/pans/layouts/built-in-layouts';
import { emptyLayout } from '../../../domain/pans/layouts/unplaced-layouts';
import type { PanFamily } from '../../../domain/pans/pan-family';
import { emptyFields } from '../../../domain/records/standing/current-pan';
import type { PanModel } from '../../../state/pan/pan-model';
import { addressOf, goTo } from '../../frame/route';
import type { Needs, ScreenProps } from '../../frame/screen-props';
import { NotKept } from '../../parts/gates/not-kept';
import { PanKinds } from '../../parts/tonight/pan-kinds';
import { shortDayWords } from '../../words/day-words';
import { knockWords } from '../../words/fall/knock-words';
import { rackWords, storeTroubleWords } from '../../words/rack-words';
import { words } from '../../words/words';

type Models = Needs<'rack' | 'pan' | 'now'>;

/** Layouts that can be struck, the pans of one drum first. */
const offered = builtInLayouts
  .filter(({ layout }) => layout.drums.some(({ notes }) => notes.length > 0))
  .sort((one, other) => one.layout.drums.length - other.layout.drums.length);

const counts = [...new Set(offered.map(({ layout }) => layout.drums.length))];

/** How somebody who does not know the kind is led to it: not yet, by the number of drums, by the pictures of those. */
type Asking = 'kind' | 'drums' | number;

export function DroppedScreen({ models }: ScreenProps<Models>) {
  const { rack, pan: panModel, now } = models;
  const [asking, ask] = useState<Asking>('kind');
  useEffect(() => {
    // A search would hide the pan that is lying there.
    rack.search.value = '';
    rack.section.value = null;
    void rack.load();
  }, [rack]);
  const state = rack.state.value;
  const pans = rack.shown.value;
  const add = (family: PanFamily, layout: PanLayout, called: string): void => {
    const name = knockWords.newName(called, shortDayWords(now()));
    const { pan, kept } = panModel.add({ ...emptyFields, name, family, layout }, null);
    void kept.then(() => goTo({ screen: 'knock', pan }));
  };
  return (
    <main class="screen dropped" data-asking={asking}>
      <header class="top">
        <h1>{knockWords.droppedTitle}</h1>
      </header>
      <p class="hint warn">{knockWords.never}</p>
      {asking === 'kind' && (
        <>
          {state.kind === 'loading' && <p class="hint">{rackWords.reading}</p>}
          {state.kind === 'trouble' && <p class="hint warn">{storeTroubleWords[state.trouble]}</p>}
          {pans.length > 0 && (
            <section class="field" aria-labelledby="which">
              <h2 id="which">{knockWords.whichPan}</h2>
              {pans.map(({ pan, name }) => (
                <a key={pan} class="button" href={addressOf({ screen: 'knock', pan })}>
                  {rackWords.nameOf(name)}
                </a>
              ))}
            </section>
          )}
        </>
      )}
      <Kinds asking={asking} ask={ask} add={add} keeper={panModel} hasPans={pans.length > 0} />
      <footer class="actions at-the-end">
        {asking === 'kind' ? (
          <a class="button" href={addressOf('rack')}>
            {words.back}
          </a>
        ) : (
          <button type="button" onClick={() => ask(asking === 'drums' ? 'kind' : 'drums')}>
            {words.back}
          </button>
        )}
      </footer>
    </main>
  );
}

function Kinds({
  asking,
  ask,
  add,
  keeper,
  hasPans,
}: {
  readonly asking: Asking;
  readonly ask: (asking: Asking) => void;
  readonly add: (family: PanFamily, layout: PanLayout, called: string) => void;
  readonly keeper: PanModel;
  readonly hasPans: boolean;
}) {
  const heading = asking === 'drums' ? knockWords.howMany : knockWords.fits;
  if (asking === 'drums') {
    return (
      <section class="field" aria-labelledby="not-here">
        <h2 id="not-here">{heading}</h2>
        <p>{knockWords.howManyHint}</p>
        <div class="pan-counts">
          {counts.map((count) => (
            <button key={count} type="button" onClick={() => ask(count)}>
              {knockWords.drums(count)}
            </button>
          ))}
        </div>
        <None add={add} drums={1} />
      </section>
    );
  }
  const kinds =
    asking === 'kind' ? offered : offered.filter(({ layout }) => layout.drums.length === asking);
  return (
    <section class="field" aria-labelledby="not-here">
      <h2 id="not-here">
        {asking !== 'kind' ? heading : hasPans ? knockWords.notHere : knockWords.whichKind}
      </h2>
      <p>{asking === 'kind' ? knockWords.notHereHint : knockWords.fitsHint}</p>
      <NotKept keeper={keeper} />
      {asking === 'kind' && (
        <button type="button" class="wide" onClick={() => ask('drums')}>
          {knockWords.dontKnow}
        </button>
      )}
      <PanKinds kinds={kinds} onChoose={({ family, layout }) => add(family, layout, layout.name)} />
      {asking !== 'kind' && <None add={add} drums={asking} />}
    </section>
  );
}

/** The check goes on: what was seen counts, with a drawing or without. */
const None = ({
  add,
  drums,
}: {
  readonly add: (family: PanFamily, layout: PanLayout, called: string) => void;
  readonly drums: number;
}) => (
  <button
    type="button"
    class="wide"
    onClick={() => {
      const empty = Array.from({ length: drums }, (_, k) => ({ name: String(k + 1), notes: [] }));
      add('other', { ...emptyLayout, drums: empty }, knockWords.unknownPan);
    }}
  >
    {knockWords.noneFits}
  </button>
);
