// A new pan: its layout first, then its name; everything else can wait.
import { useState } from 'preact/hooks';
import type { PanFields } from '../../../domain/records/rack-records';
import { checkDraft, type DraftFault, emptyDraft } from '../../../state/pan/pan-draft';
import { addressOf, goTo } from '../../frame/route';
import type { Needs, ScreenProps } from '../../frame/screen-props';
import { PhotoField } from '../../parts/controls/photo-field';
import { NotKept } from '../../parts/gates/not-kept';
import { type ChosenLayout, LayoutChooser } from '../../parts/layout/layout-chooser';
import { PanForm } from '../../parts/pan/pan-form';
import { panWords } from '../../words/pan-words';
import { words } from '../../words/words';

type Models = Needs<'pan' | 'settings' | 'photos'>;

export function AddPanScreen({ models }: ScreenProps<Models>) {
  const [choice, choose] = useState<ChosenLayout | null>(null);
  if (choice) return <Named models={models} choice={choice} onBack={() => choose(null)} />;
  return (
    <main class="screen">
      <header class="top">
        <h1>{panWords.addTitle}</h1>
      </header>
      <LayoutChooser onTake={choose} />
      <footer class="actions at-the-end">
        <a class="button" href={addressOf('rack')}>
          {words.back}
        </a>
      </footer>
    </main>
  );
}

function Named({
  models,
  choice,
  onBack,
}: Pick<ScreenProps<Models>, 'models'> & {
  readonly choice: ChosenLayout;
  readonly onBack: () => void;
}) {
  const [draft, setDraft] = useState(emptyDraft);
  const [faults, setFaults] = useState<readonly DraftFault[]>([]);
  const [photo, setPhoto] = useState<Uint8Array<ArrayBuffer> | null>(null);
  const [isAdded, setIsAdded] = useState(false);
  const add = (): void => {
    const checked = checkDraft(draft);
    setFaults(checked.kind === 'faulty' ? checked.faults : []);
    if (checked.kind === 'faulty') return;
    const { family, layout, kind } = choice;
    const fields: PanFields = {
      ...checked.fields,
      family,
      layout,
      photo: null,
      wanted: '',
      wantedBy: '',
      isRemoved: false,
    };
    const { pan, kept } = models.pan.add(fields, photo);
    setIsAdded(true);
    // Notes without published positions are arranged before they are struck.
    void kept.then(() => goTo({ screen: kind === 'unplaced' ? 'layout' : 'pan', pan }));
  };
  // Without the form: a second pan of the same name would be added.
  if (isAdded && models.pan.saving.value.kind === 'not-kept')
    return <Waiting keeper={models.pan} />;
  return (
    <main class="screen">
      <header class="top">
        <h1>{panWords.addTitle}</h1>
        <span>{choice.layout.name}</span>
      </header>
      <form
        class="form"
        noValidate
        onSubmit={(event) => {
          event.preventDefault();
          add();
        }}
      >
        <PanForm
          draft={draft}
          faults={faults}
          bandA4={String(models.settings.a4.value)}
          onChange={setDraft}
        />
        <PhotoField photos={models.photos} bytes={photo} name={draft.name} onChange={setPhoto} />
        <footer class="actions">
          <button type="button" onClick={onBack}>
            {words.back}
          </button>
          <button type="submit" class="main">
            {panWords.keepNew}
          </button>
        </footer>
      </form>
    </main>
  );
}

/** The pan that could not be kept waits; trying again leads to its page. */
function Waiting({ keeper }: { readonly keeper: Models['pan'] }) {
  return (
    <main class="screen">
      <header class="top">
        <h1>{panWords.addTitle}</h1>
      </header>
      <NotKept keeper={keeper} />
      <footer class="actions">
        <a class="button" href={addressOf('rack')}>
          {words.back}
        </a>
      </footer>
    </main>
  );
}
