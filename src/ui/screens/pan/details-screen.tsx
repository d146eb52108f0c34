// Name and details of a pan: typed, photographed, taken off the rack; and what two phones wrote differently.
import { useState } from 'preact/hooks';
import type { FieldConflict } from '../../../domain/records/standing/current-pan';
import { changesOf, checkDraft, type DraftFault } from '../../../state/pan/pan-draft';
import type { OpenPan, PanModel } from '../../../state/pan/pan-model';
import { addressOf, goTo } from '../../frame/route';
import type { Needs } from '../../frame/screen-props';
import { PhotoField } from '../../parts/controls/photo-field';
import { NotKept } from '../../parts/gates/not-kept';
import { PanGate } from '../../parts/gates/pan-gate';
import { PanForm } from '../../parts/pan/pan-form';
import { usePanDraft } from '../../parts/pan/use-pan-draft';
import { conflictTitle, conflictValue, panWords } from '../../words/pan-words';
import { words } from '../../words/words';

type Models = Needs<'pan' | 'settings' | 'photos'>;

/** A new photo, none any more, or the one that is there. */
type PhotoChange = Uint8Array<ArrayBuffer> | null | 'as-it-is';

export function DetailsScreen({ models }: { readonly models: Models }) {
  return <PanGate model={models.pan}>{(pan) => <Details models={models} pan={pan} />}</PanGate>;
}

function Details({ models, pan }: { readonly models: Models; readonly pan: OpenPan }) {
  const { fields, conflicts } = pan.current;
  const model = models.pan;
  const [photo, setPhoto] = useState<PhotoChange>('as-it-is');
  const { draft, setDraft, known } = usePanDraft(pan, photo !== 'as-it-is');
  const [faults, setFaults] = useState<readonly DraftFault[]>([]);
  const shownPhoto = photo === 'as-it-is' ? (pan.photo?.bytes ?? null) : photo;
  return (
    <main class="screen">
      <header class="top">
        <h1>{panWords.details}</h1>
      </header>
      {conflicts.map((conflict) => (
        <Conflict key={conflict.field} conflict={conflict} model={model} />
      ))}
      <form
        class="form"
        noValidate
        onSubmit={(event) => {
          event.preventDefault();
          const checked = checkDraft(draft);
          setFaults(checked.kind === 'faulty' ? checked.faults : []);
          if (checked.kind === 'faulty') return;
          const newPhoto = photo === 'as-it-is' ? null : photo;
          const changes = changesOf(fields, checked.fields);
          if (Object.keys(changes).length > 0 || newPhoto) {
            void model.save(changes, newPhoto, known);
          }
          // An edit of its own: to have the photo back takes nothing else back.
          if (photo === null && fields.photo !== null) {
            void model.save({ photo: null }, null, known, { kind: 'photo' });
          }
          goTo({ screen: 'pan', pan: pan.id });
        }}
      >
        <PanForm
          draft={draft}
          faults={faults}
          bandA4={String(models.settings.a4.value)}
          onChange={setDraft}
        />
        <PhotoField
          photos={models.photos}
          bytes={shownPhoto}
          name={fields.name}
          onChange={setPhoto}
        />
        <button
          type="button"
          onClick={() => {
            const undoable = fields.isRemoved ? undefined : ({ kind: 'pan' } as const);
            void model.save({ isRemoved: !fields.isRemoved }, null, undefined, undoable);
            goTo(fields.isRemoved ? { screen: 'pan', pan: pan.id } : 'rack');
          }}
        >
          {fields.isRemoved ? panWords.putBack : panWords.removePan}
        </button>
        <NotKept keeper={model} />
        <footer class="actions">
          <a class="button" href={addressOf({ screen: 'pan', pan: pan.id })}>
            {words.back}
          </a>
          <button type="submit" class="main">
            {panWords.keep}
          </button>
        </footer>
      </form>
    </main>
  );
}

function Conflict({
  conflict,
  model,
}: {
  readonly conflict: FieldConflict;
  readonly model: Pick<PanModel, 'save'>;
}) {
  const { field, values } = conflict;
  return (
    <section class="hint warn">
      <h2>{conflictTitle(field)}</h2>
      <p>{panWords.whichIsRight}</p>
      <div class="pair">
        {values.map(({ value, at }) => (
          <button key={`${at}`} type="button" onClick={() => void model.save({ [field]: value })}>
            {conflictValue(field, value, at)}
          </button>
        ))}
      </div>
    </section>
  );
}
