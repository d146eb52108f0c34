// What a person types about a pan, before it is saved: checked as a whole, kept as typed while it is wrong.
import type { PanFields } from '../../domain/records/rack-records';
import { highestA4, lowestA4 } from '../../domain/tuning/equal-temperament';
import { type Hertz, hertz } from '../../domain/tuning/units';

/** The texts of the form. */
export interface PanDraft {
  readonly name: string;
  readonly owner: string;
  readonly maker: string;
  readonly serial: string;
  readonly finish: string;
  readonly remarks: string;
  readonly a4: string;
}

export type DraftFault = 'name' | 'a4';

export const emptyDraft: PanDraft = {
  name: '',
  owner: '',
  maker: '',
  serial: '',
  finish: '',
  remarks: '',
  a4: '',
};

export const draftOf = (fields: PanFields): PanDraft => ({
  name: fields.name,
  owner: fields.owner,
  maker: fields.maker,
  serial: fields.serial,
  finish: fields.finish,
  remarks: fields.remarks,
  a4: fields.a4 === null ? '' : String(fields.a4),
});

export type CheckedDraft =
  | { readonly kind: 'good'; readonly fields: DraftFields }
  | { readonly kind: 'faulty'; readonly faults: readonly DraftFault[] };

export type DraftFields = Pick<PanFields, keyof PanDraft>;

/** The fields a draft stands for, without blanks around the texts; an empty A4 follows the band. */
export function checkDraft(draft: PanDraft): CheckedDraft {
  const a4 = typedA4(draft.a4);
  const faults: DraftFault[] = [];
  if (draft.name.trim() === '') faults.push('name');
  if (a4 === undefined) faults.push('a4');
  if (faults.length > 0 || a4 === undefined) return { kind: 'faulty', faults };
  const { name, owner, maker, serial, finish, remarks } = draft;
  return {
    kind: 'good',
    fields: {
      name: name.trim(),
      owner: owner.trim(),
      maker: maker.trim(),
      serial: serial.trim(),
      finish: finish.trim(),
      remarks: remarks.trim(),
      a4,
    },
  };
}

/** Only what the draft changes, so that nothing else is written over what another phone wrote. */
export function changesOf(fields: PanFields, wanted: DraftFields): Partial<DraftFields> {
  const changed = Object.entries(wanted).filter(
    ([name, value]) => fields[name as keyof DraftFields] !== value,
  );
  return Object.fromEntries(changed);
}

/** Something was typed on the form that began with `fields`. */
export const isTyped = (draft: PanDraft, fields: PanFields): boolean =>
  typedFields(draft, fields).length > 0;

/** The draft once the pan has become `to` while it was typed on `from`: what was typed stays, the rest follows. */
export const draftAfter = (draft: PanDraft, from: PanFields, to: PanFields): PanDraft => ({
  ...draftOf(to),
  ...Object.fromEntries(typedFields(draft, from)),
});

function typedFields(draft: PanDraft, fields: PanFields): readonly [string, string][] {
  const before = draftOf(fields);
  return Object.entries(draft).filter(([name, text]) => before[name as keyof PanDraft] !== text);
}

/** Undefined: not an A4 that can be set. */
function typedA4(text: string): Hertz | null | undefined {
  const plain = text.trim().replace(',', '.');
  if (plain === '') return null;
  const value = /^\d+(\.\d+)?$/.test(plain) ? Number(plain) : Number.NaN;
  return value >= lowestA4 && value <= highestA4 ? hertz(value) : undefined;
}
