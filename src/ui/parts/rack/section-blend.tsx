// The sections of the rack: how far their pan pitches are apart, and on request which notes of two pans beat.
import { useState } from 'preact/hooks';
import type { PitchedPan, Section } from '../../../domain/rack/section-blend';
import type { PanId } from '../../../domain/records/rack-records';
import type { BlendModel } from '../../../state/rack/blend-model';
import { storeTroubleWords } from '../../words/rack-words';
import { blendLine, sectionPans, sectionTitle, visitWords } from '../../words/tuner/visit-words';
import { signedCents } from '../../words/words';
import '../drawing/note-rows.css';

export function SectionBlend({
  model,
  sections,
}: {
  readonly model: BlendModel;
  readonly sections: readonly Section[];
}) {
  return (
    <section aria-label={visitWords.sections}>
      <h2>{visitWords.sections}</h2>
      <p>{sections.length === 0 ? visitWords.noSections : visitWords.sectionsWhy}</p>
      {sections.map((section) => (
        <SectionPans key={section.family} model={model} section={section} />
      ))}
    </section>
  );
}

function SectionPans({
  model,
  section,
}: {
  readonly model: BlendModel;
  readonly section: Section;
}) {
  const { pans } = section;
  const ids = pans.map(({ card }) => card.pan);
  // The two that are farthest apart, unless somebody chose others.
  const [chosen, setChosen] = useState<readonly [PanId | null, PanId | null]>([null, null]);
  const first = known(ids, chosen[0]) ?? ids[0];
  const second = known(ids, chosen[1]) ?? ids.at(-1);
  if (first === undefined || second === undefined) return null;
  const compared = model.blend.value;
  const isThese = compared?.first === first && compared.second === second;
  const view = compared?.view;
  return (
    <div class="rows">
      <h3>{sectionTitle(section)}</h3>
      <p>{sectionPans(section)}</p>
      <PanChoice
        label={visitWords.first}
        pans={pans}
        chosen={first}
        onChoose={(pan) => setChosen([pan, second])}
      />
      <PanChoice
        label={visitWords.second}
        pans={pans}
        chosen={second}
        onChoose={(pan) => setChosen([first, pan])}
      />
      <button
        type="button"
        disabled={first === second}
        onClick={() => void model.compare(first, second)}
      >
        {visitWords.compare}
      </button>
      {isThese && view?.kind === 'loading' && (
        <p class="hint" role="status">
          {visitWords.reading}
        </p>
      )}
      {view?.kind === 'trouble' && <p class="hint warn">{storeTroubleWords[view.trouble]}</p>}
      {isThese && view?.kind === 'open' && (
        <>
          <p>{view.notes.length === 0 ? visitWords.noBeats : visitWords.beat}</p>
          <ul class="plain-rows">
            {view.notes.slice(0, shownNotes).map((each) => {
              const { note, apart } = blendLine(each);
              return (
                <li key={note} class="plain-row" data-note={each.note}>
                  <b>{note}</b> <span>{apart}</span>
                </li>
              );
            })}
          </ul>
        </>
      )}
    </div>
  );
}

/** The rest would not be listened to. */
const shownNotes = 8;

const known = (ids: readonly PanId[], chosen: PanId | null): PanId | undefined =>
  ids.find((id) => id === chosen);

function PanChoice({
  label,
  pans,
  chosen,
  onChoose,
}: {
  readonly label: string;
  readonly pans: readonly PitchedPan[];
  readonly chosen: PanId;
  readonly onChoose: (pan: PanId) => void;
}) {
  return (
    <label class="field">
      <span>{label}</span>
      <select
        value={chosen}
        onChange={({ currentTarget: { value } }) => {
          const pan = pans.find(({ card }) => card.pan === value);
          if (pan) onChoose(pan.card.pan);
        }}
      >
        {pans.map(({ card, panPitch }) => (
          <option key={card.pan} value={card.pan}>
            {card.name}, {signedCents(panPitch)}
          </option>
        ))}
      </select>
    </label>
  );
}
