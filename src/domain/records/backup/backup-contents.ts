// What a backup holds, pan by pan, in as much detail as people want to know before they send it or take it in.
import { sumOf } from '../../numbers/averages';
import type { Instant } from '../../tuning/units';
import type { PanEdit, PanId } from '../rack-records';
import { turnOf } from '../record-order';
import type { BackupPart } from './backup-format';

export interface PanContents {
  readonly pan: PanId;
  /** As the newest edit has it; empty where none has a name. */
  readonly name: string;
  /** Empty where nobody wrote one. */
  readonly owner: string;
  readonly hasRemarks: boolean;
  readonly rounds: number;
  readonly readings: number;
  readonly photos: number;
  readonly sounds: number;
}

interface Tally extends PanContents {
  /** Places of the edits that the texts are from. */
  readonly at: Partial<Record<'name' | 'owner' | 'remarks', Instant>>;
}

/** Counts what it is shown; grows with the number of pans, not of records. */
export class ContentsTally {
  readonly #pans = new Map<PanId, Tally>();

  add(part: BackupPart): void {
    const { pan } = part.kind === 'record' ? part.record : part.attachment;
    const tally = this.#pans.get(pan) ?? emptyOf(pan);
    this.#pans.set(pan, counted(tally, part));
  }

  /** In the order in which the pans were first met. */
  get contents(): readonly PanContents[] {
    return Array.from(this.#pans.values(), ({ at: _, ...contents }) => contents);
  }
}

const emptyOf = (pan: PanId): Tally => ({
  pan,
  name: '',
  owner: '',
  hasRemarks: false,
  rounds: 0,
  readings: 0,
  photos: 0,
  sounds: 0,
  at: {},
});

function counted(tally: Tally, part: BackupPart): Tally {
  if (part.kind === 'attachment') {
    return part.attachment.kind === 'photo'
      ? { ...tally, photos: tally.photos + 1 }
      : { ...tally, sounds: tally.sounds + 1 };
  }
  switch (part.record.kind) {
    case 'round':
      return { ...tally, rounds: tally.rounds + 1 };
    case 'reading':
      return { ...tally, readings: tally.readings + 1 };
    case 'pan-edit':
      return edited(tally, part.record);
    default:
      return tally;
  }
}

function edited(tally: Tally, edit: PanEdit): Tally {
  const { fields } = edit;
  const at = turnOf(edit);
  const isNewer = (field: 'name' | 'owner' | 'remarks'): boolean =>
    fields[field] !== undefined && at >= (tally.at[field] ?? Number.NEGATIVE_INFINITY);
  const { name, owner, remarks } = fields;
  return {
    ...tally,
    ...(name !== undefined && isNewer('name') ? { name } : {}),
    ...(owner !== undefined && isNewer('owner') ? { owner } : {}),
    ...(remarks !== undefined && isNewer('remarks') ? { hasRemarks: remarks !== '' } : {}),
    at: {
      ...tally.at,
      ...(isNewer('name') ? { name: at } : {}),
      ...(isNewer('owner') ? { owner: at } : {}),
      ...(isNewer('remarks') ? { remarks: at } : {}),
    },
  };
}

/** All pans of a file together. */
export function totalOf(pans: readonly PanContents[]): Omit<
  PanContents,
  'pan' | 'name' | 'owner'
> & {
  /** Each owner once. */
  readonly owners: readonly string[];
} {
  return {
    owners: [...new Set(pans.flatMap(({ owner }) => (owner === '' ? [] : [owner])))],
    hasRemarks: pans.some((pan) => pan.hasRemarks),
    rounds: sumOf(pans, (pan) => pan.rounds),
    readings: sumOf(pans, (pan) => pan.readings),
    photos: sumOf(pans, (pan) => pan.photos),
    sounds: sumOf(pans, (pan) => pan.sounds),
  };
}
