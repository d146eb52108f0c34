// What a pan is called, who owns it and how it is laid out today: it follows from all its edits.

import type { Instant } from '../../tuning/units';
import { canonicalText } from '../canonical-text';
import type { PanEdit, PanFields, PanId, PanRecords, RecordId } from '../rack-records';
import { newestOf, olderFirst } from '../record-order';
import { erasedIds } from './without-erased';

export type PanField = keyof PanFields;

/** Two or more values of one field that were written without knowing of each other, the shown one first. */
export interface FieldConflict<Field extends PanField = PanField> {
  readonly field: Field;
  readonly values: readonly FieldValue<Field>[];
}

export interface FieldValue<Field extends PanField = PanField> {
  readonly value: PanFields[Field];
  /** When it was written; the newest time where it was written more than once. */
  readonly at: Instant;
}

export interface CurrentPan {
  readonly fields: PanFields;
  readonly conflicts: readonly FieldConflict[];
  /** Fields that no edit holds any more, because a part of the rack was lost: they have an empty value. */
  readonly missing: readonly PanField[];
}

/**
 * A pan about which nobody has said anything. Also stands in for lost fields: a pan whose name was lost has an empty
 * one.
 */
export const emptyFields: PanFields = {
  name: '',
  family: 'other',
  layout: { id: '', name: '', drums: [], source: '' },
  owner: '',
  maker: '',
  serial: '',
  finish: '',
  remarks: '',
  a4: null,
  photo: null,
  wanted: '',
  wantedBy: '',
  isRemoved: false,
};

/** Fields that pans of older versions of the app do not have: if they are missing, nothing was lost. */
const laterFields: ReadonlySet<PanField> = new Set(['wanted', 'wantedBy']);

const panFieldNames = Object.keys(emptyFields) as readonly PanField[];

/** The records of a pan that its fields follow from, erased edits and all. */
export type PanHistory = Pick<PanRecords, 'edits' | 'erasures'>;

/**
 * The fields of a pan, whatever order its records are given in. Where several values stand, the newest is
 * shown, then the one with the greater id.
 */
export function currentPan(history: PanHistory): CurrentPan {
  const fields: Partial<Record<PanField, unknown>> = { ...emptyFields };
  const missing: PanField[] = [];
  for (const field of panFieldNames) {
    const shown = newestOf(headsOf(history, field));
    if (shown) fields[field] = shown.fields[field];
    else if (!laterFields.has(field)) missing.push(field);
  }
  return { fields: fields as unknown as PanFields, conflicts: fieldConflicts(history), missing };
}

/** The fields for which different values stand beside each other. */
export function fieldConflicts(history: PanHistory): readonly FieldConflict[] {
  return panFieldNames.flatMap((field) => {
    const byText = new Map<string, FieldValue>();
    for (const edit of [...headsOf(history, field)].sort(olderFirst).reverse()) {
      const value = edit.fields[field];
      const text = canonicalText(value);
      if (value !== undefined && !byText.has(text)) byText.set(text, { value, at: edit.at });
    }
    return byText.size > 1 ? [{ field, values: [...byText.values()] }] : [];
  });
}

/**
 * The edits whose value of `field` stands: those that no other edit of the same field replaces, be it by way of
 * others. So a value does not come back when an edit in the middle of a row is erased, but does when the last
 * one is. Edits that replace each other in a circle (no phone writes such) stand all: no value is lost to them.
 */
function headsOf({ edits, erasures }: PanHistory, field: PanField): readonly PanEdit[] {
  const erased = erasedIds(erasures);
  const ofField = edits.filter(({ id, fields }) => !erased.has(id) && fields[field] !== undefined);
  const byId = new Map(edits.map((edit) => [edit.id, edit]));
  const replaced = new Set<RecordId>();
  const open = [...ofField];
  for (let edit = open.pop(); edit !== undefined; edit = open.pop()) {
    for (const id of edit.replaces) {
      if (id === edit.id || replaced.has(id)) continue;
      replaced.add(id);
      const earlier = byId.get(id);
      if (earlier) open.push(earlier);
    }
  }
  const heads = ofField.filter((edit) => !replaced.has(edit.id));
  return heads.length > 0 ? heads : ofField;
}

/** What a new record needs from outside. */
export interface NewRecord {
  readonly id: RecordId;
  readonly at: Instant;
  readonly turn?: Instant;
}

/**
 * An edit that writes `changes` and replaces every value of these fields that stands: so it also resolves a
 * conflict, by writing the value that is right. For a new pan the history is empty and `changes` has all fields.
 */
export function editOf(
  pan: PanId,
  history: PanHistory,
  changes: Partial<PanFields>,
  { id, at, turn }: NewRecord,
): PanEdit {
  const changed = panFieldNames.filter((field) => changes[field] !== undefined);
  const heads = changed.flatMap((field) => headsOf(history, field).map((edit) => edit.id));
  const replaces = [...new Set(heads)].sort();
  const head = { shape: 1, id, pan, at, ...(turn === undefined ? {} : { turn }) } as const;
  return { ...head, kind: 'pan-edit', fields: changes, replaces };
}
