// The first screen: what can be done now.
import type { AppModels } from '../app-models';
import { FileButton } from '../parts/file-button';
import { addressOf } from '../route';
import { words } from '../words';

export function RackScreen({ models }: { readonly models: AppModels }) {
  const { listen, settings, offline } = models;
  const offlineKind = offline.value.kind;
  return (
    <main class="screen rack">
      <header class="top">
        <h1>{words.rack}</h1>
        <span>{words.rackAside}</span>
      </header>
      <a
        class="button main listen"
        href={addressOf('listen')}
        onClick={() => {
          void listen.listen();
        }}
      >
        {words.listen}
      </a>
      <div class="pair">
        <a class="button" href={addressOf('practice')}>
          {words.practice}
        </a>
        <FileButton
          onFile={(file) => {
            window.location.hash = addressOf('listen');
            void listen.openFile(file);
          }}
        />
      </div>
      <p class="hint">{words.emptyRack}</p>
      <a class="caution" href={addressOf('settings')}>
        {words.cautionLink}
      </a>
      <a class="button" href={addressOf('settings')}>
        {words.settings}
      </a>
      {settings.isNotKept.value && <p class="hint warn">{words.notKept}</p>}
      <p class="offline" role="status" data-offline={offlineKind}>
        {words.offline[offlineKind]}
      </p>
      {offlineKind === 'update-waiting' &&
        (listen.isBusy.value ? (
          <p class="hint">{words.updateLater}</p>
        ) : (
          <button type="button" onClick={models.applyUpdate}>
            {words.updateNow}
          </button>
        ))}
    </main>
  );
}
