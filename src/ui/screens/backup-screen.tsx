// Out to one file, and in from one: of the whole rack, or of one pan.
import { useEffect } from 'preact/hooks';
import type { BackupScope, CheckedBackup } from '../../domain/ports/backup-files';
import type { ComingIn, GoingOut } from '../../state/backup-model';
import type { PanScreenModels } from '../app-models';
import type { ScreenProps } from '../late-screen';
import { PanGate } from '../parts/pan-gate';
import { addressOf, type Route } from '../route';
import { words } from '../words';
import {
  backupWords,
  faultWords,
  handedOutWords,
  refusalWords,
  sizeWords,
  takeInTroubleWords,
} from '../words/backup-words';
import { agoWords, storeTroubleWords } from '../words/rack-words';

export function BackupScreen({ models, route }: ScreenProps) {
  if (route.screen !== 'send') {
    return (
      <Backup models={models} scope={{ kind: 'rack' }} title={backupWords.title} back="rack" />
    );
  }
  return (
    <PanGate models={models}>
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
  readonly models: PanScreenModels;
  readonly scope: BackupScope;
  readonly title: string;
  readonly back: Route | 'rack';
}) {
  const { backup, settings } = models;
  useEffect(() => () => backup.leave(), [backup]);
  const last = settings.lastBackup.value;
  const isRack = scope.kind === 'rack';
  return (
    <main class="screen">
      <header class="top">
        <h1>{title}</h1>
      </header>
      <p>{isRack ? backupWords.why : backupWords.whyPan}</p>
      {isRack && (
        <p class="aside">
          {last ? backupWords.last(agoWords(last.at, models.now())) : backupWords.never}{' '}
          {models.durability.value === 'persistent' ? backupWords.keptSafe : backupWords.keptUnsafe}
        </p>
      )}
      <Out models={models} scope={scope} />
      {isRack && (
        <section class="form">
          <h2>{backupWords.takeTitle}</h2>
          <p>{backupWords.takeWhy}</p>
          <In models={models} />
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

const percent = (part: number): number => Math.round(100 * part);

function Out({
  models: { backup },
  scope,
}: {
  readonly models: PanScreenModels;
  readonly scope: BackupScope;
}) {
  const out = backup.out.value;
  return (
    <>
      {out.kind === 'ready' && (
        <button type="button" class="main" onClick={() => void backup.handOut()}>
          {backupWords.handOut}
        </button>
      )}
      <p role="status" class={outSentence(out) === '' ? '' : 'hint'} data-out={out.kind}>
        {outSentence(out)}
      </p>
      <button
        type="button"
        class={out.kind === 'ready' ? '' : 'main'}
        disabled={out.kind === 'making'}
        onClick={() => void backup.make(scope)}
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

function In({ models: { backup } }: { readonly models: PanScreenModels }) {
  const into = backup.into.value;
  const isBusy = into.kind === 'checking' || into.kind === 'taking';
  return (
    <>
      <div role="status" data-into={into.kind}>
        <InState into={into} />
      </div>
      {into.kind === 'checked' && (
        <button type="button" class="main" onClick={() => void backup.takeIn()}>
          {backupWords.takeIn}
        </button>
      )}
      {!isBusy && (
        <label class="button file">
          {backupWords.choose}
          <input
            type="file"
            onChange={(event) => {
              const file = event.currentTarget.files?.[0];
              // The same file may be chosen again.
              event.currentTarget.value = '';
              if (file) void backup.check(file);
            }}
          />
        </label>
      )}
    </>
  );
}

function InState({ into }: { readonly into: ComingIn }) {
  switch (into.kind) {
    case 'idle':
      return null;
    case 'checking':
      return <p class="hint">{backupWords.checking(percent(into.part))}</p>;
    case 'refused':
      return <p class="hint warn">{refusalWords[into.why]}</p>;
    case 'checked':
      return <Checked backup={into.backup} />;
    case 'taking':
      return <p class="hint">{backupWords.taking(percent(into.part))}</p>;
    case 'taken':
      return <p class="hint">{backupWords.taken(into.added.records + into.added.attachments)}</p>;
    case 'trouble':
      return <p class="hint warn">{takeInTroubleWords(into.trouble)}</p>;
  }
}

/** How many of the lines that are left out are named. */
const linesNamed = 8;

function Checked({ backup }: { readonly backup: CheckedBackup }) {
  const { isWhole, pans, readings, report } = backup;
  if (isWhole) return <p class="hint">{backupWords.whole(pans.length, readings)}</p>;
  const named = report.leftOut.slice(0, linesNamed);
  const more = report.leftOutCount - named.length;
  return (
    <div class="hint warn">
      <p>
        {backupWords.inPart} {backupWords.someOf(pans.length, readings)}.
      </p>
      <ul class="cautions">
        {report.faults.map((fault) => (
          <li key={fault}>{faultWords[fault]}</li>
        ))}
        {named.map(({ line }) => (
          <li key={line}>{backupWords.lineLeftOut(line)}</li>
        ))}
        {more > 0 && <li>{backupWords.moreLeftOut(more)}</li>}
        {report.repairedCount > 0 && <li>{backupWords.repaired(report.repairedCount)}</li>}
      </ul>
    </div>
  );
}
