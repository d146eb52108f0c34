// Several pans at once: sent in one file, their sheets printed, or given another owner.
import { useEffect, useState } from 'preact/hooks';
import { longestOfPan } from '../../../domain/records/longest-texts';
import type { PanId } from '../../../domain/records/rack-records';
import { addressOf } from '../../frame/route';
import type { Needs } from '../../frame/screen-props';
import { TextField } from '../../parts/controls/form-fields';
import { NotKept } from '../../parts/gates/not-kept';
import { MarkupView } from '../../sheet/markup-view';
import { sheetPage } from '../../sheet/sheet-page';
import '../../sheet/sheet.css';
import '../../parts/sheet/paper.css';
import './several-screen.css';
import { familyTitle } from '../../words/family-words';
import { severalWords } from '../../words/finder-words';
import { backupWords, handedOutWords, sizeWords } from '../../words/keeping/backup-words';
import { rowWords } from '../../words/list-words';
import { rackWords, storeTroubleWords } from '../../words/rack-words';
import { words } from '../../words/words';

type Models = Needs<'rack' | 'several' | 'backup' | 'printer'>;

export function SeveralScreen({ models }: { readonly models: Models }) {
  const { rack, several, backup } = models;
  const [chosen, choose] = useState<ReadonlySet<PanId>>(new Set());
  useEffect(() => {
    void rack.load();
    return () => {
      several.leave();
      backup.leave();
    };
  }, [rack, several, backup]);
  const cards = rack.shown.value;
  const pans = cards.filter(({ pan }) => chosen.has(pan)).map(({ pan }) => pan);
  const change = (next: ReadonlySet<PanId>): void => {
    several.leave();
    backup.leave();
    choose(next);
  };
  const allAre = pans.length === cards.length;
  return (
    <main class="screen with-paper several">
      <header class="top">
        <h1>{severalWords.title}</h1>
        <span role="status">{severalWords.chosen(pans.length)}</span>
      </header>
      <NotKept keeper={several} />
      {cards.length === 0 && rack.state.value.kind === 'open' && (
        <div class="hint">
          <p>{severalWords.empty}</p>
          <a class="button" href={addressOf('add-pan')}>
            {rackWords.addPan}
          </a>
        </div>
      )}
      <fieldset class="field" hidden={cards.length === 0}>
        <legend>{severalWords.choose}</legend>
        <button
          type="button"
          onClick={() => change(new Set(allAre ? [] : cards.map(({ pan }) => pan)))}
        >
          {allAre ? severalWords.none : severalWords.all}
        </button>
        {cards.map(({ pan, name, family, layoutName, owner }) => (
          <label class="choice" key={pan}>
            <input
              type="checkbox"
              checked={chosen.has(pan)}
              onChange={({ currentTarget: { checked } }) => {
                const next = new Set(chosen);
                if (checked) next.add(pan);
                else next.delete(pan);
                change(next);
              }}
            />
            <span>
              {rackWords.nameOf(name)}{' '}
              <span class="aside">{rowWords([layoutName || familyTitle(family), owner])}</span>
            </span>
          </label>
        ))}
      </fieldset>
      {pans.length > 0 && <Print models={models} pans={pans} />}
      {pans.length > 0 && <Send backup={backup} pans={pans} />}
      {pans.length > 0 && <Move several={several} pans={pans} />}
      <Papers several={several} />
      <footer class="actions">
        <a class="button" href={addressOf('rack')}>
          {words.rack}
        </a>
      </footer>
    </main>
  );
}

interface Chosen {
  readonly pans: readonly PanId[];
}

/** Two taps: the sheets are made and shown, then printed. */
function Print({ models: { several, printer }, pans }: Chosen & { readonly models: Models }) {
  const sheets = several.sheets.value;
  return (
    <section class="field">
      <button
        type="button"
        class="main wide"
        disabled={sheets.kind === 'reading'}
        onClick={() => {
          if (sheets.kind === 'ready') printer.print();
          else void several.make(pans).then(() => printer.print());
        }}
      >
        {severalWords.print(pans.length)}
      </button>
      {sheets.kind === 'reading' && (
        <p class="hint" role="status">
          {severalWords.reading(sheets.done, sheets.all)}
        </p>
      )}
      {sheets.kind === 'trouble' && (
        <p class="hint warn" role="alert">
          {storeTroubleWords[sheets.trouble]}
        </p>
      )}
    </section>
  );
}

function Send({ backup, pans }: Chosen & { readonly backup: Models['backup'] }) {
  const out = backup.out.value;
  return (
    <section class="field">
      {out.kind === 'ready' ? (
        <button type="button" class="wide" onClick={() => void backup.handOut()}>
          {backupWords.handOut}
        </button>
      ) : (
        <button
          type="button"
          class="wide"
          disabled={out.kind === 'making'}
          onClick={() => void backup.make({ kind: 'pans', pans })}
        >
          {severalWords.make(pans.length)}
        </button>
      )}
      {out.kind === 'ready' && (
        <p class="hint" role="status">
          {out.handedOut === null || out.handedOut === 'dismissed'
            ? backupWords.ready(out.file.name, sizeWords(out.file.size))
            : handedOutWords[out.handedOut]}
        </p>
      )}
      {out.kind === 'trouble' && (
        <p class="hint warn" role="alert">
          {storeTroubleWords[out.trouble]}
        </p>
      )}
    </section>
  );
}

function Move({ several, pans }: Chosen & { readonly several: Models['several'] }) {
  const [owner, setOwner] = useState('');
  const [said, say] = useState<string | null>(null);
  return (
    <form
      class="form"
      onSubmit={(event) => {
        event.preventDefault();
        void several.moveTo(pans, owner).then((trouble) => {
          say(
            trouble === null
              ? severalWords.moved(pans.length, owner.trim())
              : storeTroubleWords[trouble],
          );
        });
      }}
    >
      <TextField
        id="new-owner"
        label={severalWords.owner}
        hint={severalWords.ownerHint}
        value={owner}
        longest={longestOfPan.owner}
        onInput={setOwner}
      />
      <button type="submit" class="wide">
        {severalWords.move(pans.length)}
      </button>
      {said !== null && (
        <p class="hint" role="status">
          {said}
        </p>
      )}
    </form>
  );
}

/** One sheet after the other, each on its own paper. */
function Papers({ several }: { readonly several: Models['several'] }) {
  const sheets = several.sheets.value;
  if (sheets.kind !== 'ready') return null;
  return (
    <div class="paper several-papers">
      {sheets.sheets.map((sheet, k) => (
        <MarkupView key={k} markup={sheetPage(sheet, null)} />
      ))}
    </div>
  );
}
