// A file comes in: shared with the app, opened with it, or chosen here. It is checked first, then the user is asked.
import { useEffect, useLayoutEffect } from 'preact/hooks';
import type { StoreTrouble } from '../../../domain/ports/pan-store';
import type { ComingIn } from '../../../state/rack/backup-model';
import { addressOf } from '../../frame/route';
import type { Needs, ScreenProps } from '../../frame/screen-props';
import { FileFound } from '../../parts/exchange/file-found';
import { FileTaken } from '../../parts/exchange/file-taken';
import {
  backupRefusalWords,
  exchangeWords,
  shareRefusalWords,
  takeInWords,
} from '../../words/keeping/exchange-words';
import { storeTroubleWords } from '../../words/rack-words';
import { words } from '../../words/words';
import '../../parts/exchange/exchange.css';

type Models = Needs<'arrival' | 'backup'>;

/** Longer names are cut, characters. */
const longestName = 80;

export function ReceiveScreen({ models }: ScreenProps<Models>) {
  const { arrival, backup } = models;
  const waiting = arrival.waiting.value;
  const into = backup.into.value;
  useEffect(() => {
    // What the file before has brought stays on the screen until the user goes on.
    if (waiting && backup.into.peek().kind === 'idle') void backup.check(waiting);
  }, [backup, waiting]);
  // At once: the next screen may make a file.
  useLayoutEffect(() => () => backup.leave(), [backup]);
  const isBusy = into.kind === 'checking' || into.kind === 'taking';
  return (
    <main class="screen exchange">
      <header class="top">
        <h1>{exchangeWords.takeTitle}</h1>
        {/* Who sent a file gave it its name: it is shown as it is, and never longer than a line or two. */}
        {waiting && into.kind !== 'taken' && (
          <span class="file-name">{waiting.name.slice(0, longestName)}</span>
        )}
      </header>
      {arrival.refused.value && <p class="hint warn">{shareRefusalWords[arrival.refused.value]}</p>}
      <div role="status" data-into={into.kind}>
        <State into={into} backup={backup} />
      </div>
      {into.kind === 'checked' && <Ask models={models} into={into} />}
      {waiting && into.kind === 'taken' && (
        <button type="button" class="main" onClick={() => void backup.check(waiting)}>
          {exchangeWords.next(waiting.name.slice(0, longestName))}
        </button>
      )}
      {waiting && (into.kind === 'refused' || into.kind === 'trouble') && <Leave models={models} />}
      {!isBusy && into.kind !== 'checked' && (
        <Choose models={models} isAgain={into.kind !== 'idle'} />
      )}
      <footer class="actions">
        <a class="button" href={addressOf('rack')}>
          {words.rack}
        </a>
      </footer>
    </main>
  );
}

function Ask({
  models: { arrival, backup },
  into,
}: {
  readonly models: Models;
  readonly into: Extract<ComingIn, { kind: 'checked' }>;
}) {
  const { here } = into.checked;
  const { button } = takeInWords(
    into.checked.backup.contents,
    ({ pan }) => here?.has(pan) ?? false,
  );
  return (
    <>
      <button
        type="button"
        class="main"
        onClick={() => {
          // It waits until all of it is on the rack: a phone that dies meanwhile asks again.
          void backup.takeIn().then(() => {
            if (backup.into.value.kind === 'taken') void arrival.letGo();
          });
        }}
      >
        {button}
      </button>
      <Leave models={{ arrival, backup }} />
    </>
  );
}

function Leave({ models: { arrival, backup } }: { readonly models: Models }) {
  return (
    <button
      type="button"
      onClick={() => {
        backup.leave();
        void arrival.letGo();
      }}
    >
      {exchangeWords.leave}
    </button>
  );
}

function Choose({
  models: { arrival, backup },
  isAgain,
}: {
  readonly models: Models;
  readonly isAgain: boolean;
}) {
  return (
    <label class="button file">
      {isAgain ? exchangeWords.chooseOther : exchangeWords.choose}
      <input
        type="file"
        onChange={(event) => {
          const file = event.currentTarget.files?.[0];
          // The same file may be chosen again.
          event.currentTarget.value = '';
          if (!file) return;
          // What was refused before need not wait any longer.
          void arrival.letGo();
          void backup.check(file);
        }}
      />
    </label>
  );
}

const percent = (part: number): number => Math.round(100 * part);

const troubleWords = (trouble: StoreTrouble | 'file-changed'): string =>
  trouble === 'file-changed' ? exchangeWords.changedFile : storeTroubleWords[trouble];

function State({ into, backup }: { readonly into: ComingIn } & Pick<Models, 'backup'>) {
  switch (into.kind) {
    case 'idle':
      return <p class="hint">{exchangeWords.none}</p>;
    case 'checking':
      return <p class="hint">{exchangeWords.checking(percent(into.part))}</p>;
    case 'refused':
      return <p class="hint warn">{backupRefusalWords[into.why]}</p>;
    case 'checked':
      return <FileFound checked={into.checked} />;
    case 'taking':
      return <p class="hint">{exchangeWords.taking(percent(into.part))}</p>;
    case 'taken':
      return <FileTaken taken={into} model={backup} />;
    case 'trouble':
      return <p class="hint warn">{troubleWords(into.trouble)}</p>;
  }
}
