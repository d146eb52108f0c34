// Out to one file: the whole rack, or one pan for the tuner or a bandmate.
import { useLayoutEffect } from 'preact/hooks';
import type { BackupScope } from '../../../domain/ports/backup-files';
import type { GoingOut } from '../../../state/rack/backup-model';
import { addressOf, type Route } from '../../frame/route';
import type { Needs, ScreenProps } from '../../frame/screen-props';
import { PanGate } from '../../parts/gates/pan-gate';
import { backupWords, handedOutWords, sizeWords } from '../../words/keeping/backup-words';
import { contentsWords, exchangeWords } from '../../words/keeping/exchange-words';
import { agoWords, rackWords, storeTroubleWords } from '../../words/rack-words';
import { words } from '../../words/words';
import '../../parts/exchange/exchange.css';

type Models = Needs<'pan' | 'backup' | 'rack' | 'settings' | 'durability' | 'now'>;

export function BackupScreen({ models, route }: ScreenProps<Models>) {
  if (route.screen !== 'send') {
    return (
      <Backup models={models} scope={{ kind: 'rack' }} title={backupWords.title} back="rack" />
    );
  }
  return (
    <PanGate model={models.pan}>
      {({ id, current: { fields } }) => (
        <Backup
          models={models}
          scope={{ kind: 'pan', pan: id, name: fields.name }}
          title={backupWords.titlePan(fields.name)}
          back={{ screen: 'pan', pan: id }}
        />
      )}
    </PanGate>
  );
}

function Backup({
  models,
  scope,
  title,
  back,
}: {
  readonly models: Models;
  readonly scope: BackupScope;
  readonly title: string;
  readonly back: Route | 'rack';
}) {
  const { backup, rack, settings } = models;
  const last = settings.lastBackup.value;
  const isRack = scope.kind === 'rack';
  // At once: a file that is made or chosen in the first moment is not forgotten again.
  useLayoutEffect(() => {
    if (isRack) void rack.load();
    // One pan is quickly done, and the share sheet wants a file that was made before the tap.
    if (!isRack) void backup.make(scope);
    return () => backup.leave();
  }, [backup]);
  return (
    <main class="screen exchange">
      <header class="top">
        <h1>{title}</h1>
      </header>
      <p>{isRack ? backupWords.why : exchangeWords.whyPan}</p>
      {isRack && (
        <p class="aside">
          {last ? backupWords.last(agoWords(last.at, models.now())) : backupWords.never}{' '}
          {models.durability.value === 'persistent' ? backupWords.keptSafe : backupWords.keptUnsafe}
        </p>
      )}
      {isRack && isEmpty(rack) ? (
        <>
          <p class="hint">{exchangeWords.nothingYet}</p>
          <a class="button main" href={addressOf('add-pan')}>
            {rackWords.addPan}
          </a>
        </>
      ) : (
        <Out model={backup} scope={scope} />
      )}
      {isRack && (
        <section>
          <h2>{exchangeWords.joinTitle}</h2>
          <p>{exchangeWords.join}</p>
          <a class="button" href={addressOf('receive')}>
            {exchangeWords.takeLink}
          </a>
        </section>
      )}
      <footer class="actions">
        <a class="button" href={addressOf(back)}>
          {words.back}
        </a>
      </footer>
    </main>
  );
}

/** Not even a pan that was taken off. */
const isEmpty = (rack: Models['rack']): boolean =>
  rack.state.value.kind === 'open' && rack.count.value + rack.removed.value.length === 0;

const percent = (part: number): number => Math.round(100 * part);

function Out({ model, scope }: { readonly model: Models['backup']; readonly scope: BackupScope }) {
  const out = model.out.value;
  const isOut =
    out.kind === 'ready' && (out.handedOut === 'shared' || out.handedOut === 'downloaded');
  return (
    <>
      {out.kind === 'ready' && (
        <section aria-label={exchangeWords.inFile}>
          <h2>{exchangeWords.inFile}</h2>
          <ul class="cautions">
            {contentsWords(out.contents).map((line) => (
              <li key={line}>{line}</li>
            ))}
          </ul>
          <p>{exchangeWords.anyone}</p>
          <button type="button" class="main" onClick={() => void model.handOut()}>
            {backupWords.handOut}
          </button>
        </section>
      )}
      <p role="status" class={outSentence(out) === '' ? '' : 'hint'} data-out={out.kind}>
        {outSentence(out)} {isOut && exchangeWords.howToOpen}
      </p>
      <button
        type="button"
        class={out.kind === 'ready' ? '' : 'main'}
        disabled={out.kind === 'making'}
        onClick={() => void model.make(scope)}
      >
        {out.kind === 'ready' ? backupWords.makeAgain : backupWords.make}
      </button>
    </>
  );
}

function outSentence(out: GoingOut): string {
  switch (out.kind) {
    case 'idle':
      return '';
    case 'making':
      return backupWords.making(percent(out.part));
    case 'trouble':
      return storeTroubleWords[out.trouble];
    case 'ready': {
      const { file, leftOut, handedOut } = out;
      return [
        handedOut === null || handedOut === 'dismissed'
          ? backupWords.ready(file.name, sizeWords(file.size))
          : handedOutWords[handedOut],
        leftOut > 0 ? backupWords.leftOut(leftOut) : '',
      ]
        .join(' ')
        .trim();
    }
  }
}
