// What is wanted of the tuner, by when, and whom to answer: kept as soon as a field is left.
import { useLayoutEffect, useState } from 'preact/hooks';
import { longestOfPan } from '../../../domain/records/longest-texts';
import { longestContact } from '../../../domain/settings/settings';
import type { OpenPan, PanModel } from '../../../state/pan/pan-model';
import type { SettingsModel } from '../../../state/settings/settings-model';
import { sheetWords } from '../../words/tuner/sheet-words';
import { TextField } from '../controls/form-fields';

const longest = { ...longestOfPan, contact: longestContact };

export function RequestForm({
  model,
  settings,
  pan,
}: {
  readonly model: Pick<PanModel, 'save'>;
  readonly settings: Pick<SettingsModel, 'contact' | 'set'>;
  readonly pan: OpenPan;
}) {
  const { wanted, wantedBy } = pan.current.fields;
  const contact = settings.contact.value;
  const [draft, setDraft] = useState({ wanted, wantedBy, contact });
  // Written in another window, or merged from another phone.
  // Each by itself: what is being typed in another field stays. Before the form is painted, or a fast typist would
  // lose what was typed first.
  useLayoutEffect(() => setDraft((typed) => ({ ...typed, wanted })), [wanted]);
  useLayoutEffect(() => setDraft((typed) => ({ ...typed, wantedBy })), [wantedBy]);
  useLayoutEffect(() => setDraft((typed) => ({ ...typed, contact })), [contact]);
  const keep = () => {
    const changes = {
      ...(draft.wanted.trim() === wanted ? {} : { wanted: draft.wanted.trim() }),
      ...(draft.wantedBy.trim() === wantedBy ? {} : { wantedBy: draft.wantedBy.trim() }),
    };
    if (Object.keys(changes).length > 0) void model.save(changes);
    const now = draft.contact.trim();
    if (now !== contact) settings.set({ contact: now });
  };
  const field = (name: keyof typeof draft) => ({
    id: `request-${name}`,
    label: sheetWords[name],
    value: draft[name],
    longest: longest[name],
    onInput: (value: string) => setDraft((typed) => ({ ...typed, [name]: value })),
  });
  return (
    <form
      class="form"
      aria-label={sheetWords.request}
      onChange={keep}
      onSubmit={(event) => {
        event.preventDefault();
        keep();
      }}
    >
      <TextField {...field('wanted')} hint={sheetWords.wantedHint} long />
      <TextField {...field('wantedBy')} />
      <TextField {...field('contact')} hint={sheetWords.contactHint} />
    </form>
  );
}
