// What is known about a pan, to be typed.
import { longestOfPan } from '../../../domain/records/longest-texts';
import type { DraftFault, PanDraft } from '../../../state/pan/pan-draft';
import { panWords } from '../../words/pan-words';
import { TextField } from '../controls/form-fields';

export function PanForm({
  draft,
  faults,
  bandA4,
  onChange,
}: {
  readonly draft: PanDraft;
  readonly faults: readonly DraftFault[];
  readonly bandA4: string;
  readonly onChange: (draft: PanDraft) => void;
}) {
  const field = (name: keyof PanDraft) => ({
    id: `pan-${name}`,
    label: panWords[name],
    value: draft[name],
    onInput: (value: string) => onChange({ ...draft, [name]: value }),
  });
  const text = (name: Exclude<keyof PanDraft, 'a4'>) => ({
    ...field(name),
    longest: longestOfPan[name],
  });
  const isNameBad = faults.includes('name');
  const isA4Bad = faults.includes('a4');
  return (
    <>
      <TextField
        {...text('name')}
        isBad={isNameBad}
        hint={isNameBad ? panWords.nameMissing : panWords.nameHint}
      />
      <TextField {...text('owner')} />
      <TextField {...text('maker')} />
      <TextField {...text('serial')} />
      <TextField {...text('finish')} />
      <TextField
        {...field('a4')}
        inputMode="decimal"
        isBad={isA4Bad}
        hint={isA4Bad ? panWords.a4Bad : panWords.a4Hint(bandA4)}
      />
      <TextField {...text('remarks')} long />
    </>
  );
}
