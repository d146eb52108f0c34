// Beside the van: which pan was dropped? One on the rack, or one that is put there with the tap that names its kind.
import { useEffect } from 'preact/hooks';
import { type BuiltInLayout, builtInLayouts } from '../../../domain/pans/layouts/built-in-layouts';
import { emptyFields } from '../../../domain/records/standing/current-pan';
import { addressOf, goTo } from '../../frame/route';
import type { Needs, ScreenProps } from '../../frame/screen-props';
import { NotKept } from '../../parts/gates/not-kept';
import { shortDayWords } from '../../words/day-words';
import { knockWords } from '../../words/fall/knock-words';
import { rackWords, storeTroubleWords } from '../../words/rack-words';
import { words } from '../../words/words';

type Models = Needs<'rack' | 'pan' | 'now'>;

/** A layout without notes cannot be struck. */
const offered = builtInLayouts.filter(({ layout }) =>
  layout.drums.some(({ notes }) => notes.length > 0),
);

export function DroppedScreen({ models }: ScreenProps<Models>) {
  const { rack, pan: panModel, now } = models;
  useEffect(() => {
    // A search would hide the pan that is lying there.
    rack.search.value = '';
    void rack.load();
  }, [rack]);
  const state = rack.state.value;
  const pans = rack.shown.value;
  const add = ({ family, layout }: BuiltInLayout): void => {
    const { pan, kept } = panModel.add(
      {
        ...emptyFields,
        name: knockWords.newName(layout.name, shortDayWords(now())),
        family,
        layout,
      },
      null,
    );
    void kept.then(() => goTo({ screen: 'knock', pan }));
  };
  return (
    <main class="screen dropped">
      <header class="top">
        <h1>{knockWords.droppedTitle}</h1>
      </header>
      <p class="hint warn">{knockWords.never}</p>
      {state.kind === 'loading' && <p class="hint">{rackWords.reading}</p>}
      {state.kind === 'trouble' && <p class="hint warn">{storeTroubleWords[state.trouble]}</p>}
      {pans.length > 0 && (
        <section class="field" aria-labelledby="which">
          <h2 id="which">{knockWords.whichPan}</h2>
          {pans.map(({ pan, name }) => (
            <a key={pan} class="button" href={addressOf({ screen: 'knock', pan })}>
              {name}
            </a>
          ))}
        </section>
      )}
      <section class="field" aria-labelledby="not-here">
        <h2 id="not-here">{pans.length > 0 ? knockWords.notHere : knockWords.whichKind}</h2>
        <p>{knockWords.notHereHint}</p>
        <NotKept keeper={panModel} />
        {offered.map((entry) => (
          <button key={entry.layout.id} type="button" onClick={() => add(entry)}>
            {entry.layout.name}
          </button>
        ))}
      </section>
      <footer class="actions at-the-end">
        <a class="button" href={addressOf('rack')}>
          {words.back}
        </a>
      </footer>
    </main>
  );
}
