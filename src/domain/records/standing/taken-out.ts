// What people took out of a pan lately, and which record is erased to have it back.
import type { Instant, MidiNote } from '../../tuning/units';
import type {
  AttachmentId,
  MarkKind,
  PanEdit,
  PanRecords,
  RecordId,
  RoundStart,
  TunerVisit,
} from '../rack-records';
import { olderFirst } from '../record-order';
import { standingMarks } from './standing-marks';
import { erasedIds, withoutErased } from './without-erased';

export type TakenOutKind =
  | { readonly kind: 'visit'; readonly visit: TunerVisit }
  | { readonly kind: 'round'; readonly round: RoundStart }
  | { readonly kind: 'pan' }
  | { readonly kind: 'photo'; readonly photo: AttachmentId }
  /** A mark that holds: it says that a note is dead, and may have been made by mistake. */
  | { readonly kind: 'mark'; readonly note: MidiNote; readonly mark: MarkKind };

export type TakenOut = TakenOutKind & {
  /** The record that took it out: erasing it brings back what was there. */
  readonly by: RecordId;
  readonly at: Instant;
};

/** How long the list has it, ms: a week (own choice). */
export const listedFor = 7 * 24 * 3600 * 1000;

/** What was taken out of a pan in the week before `now` and is not back yet, newest first. */
export function takenOut(records: PanRecords, now: Instant): readonly TakenOut[] {
  const found = [...erasedByPeople(records), ...editsThatTook(records), ...marksThatStand(records)];
  return found
    .filter(({ at }) => now - at <= listedFor)
    .sort((one, other) => other.at - one.at || (one.by < other.by ? -1 : 1));
}

/** Readings and blows are also erased where the bench writes them anew; nobody took those out. */
function erasedByPeople({ visits, rounds, erasures }: PanRecords): readonly TakenOut[] {
  const taken = erasedIds(erasures);
  const inForce = erasures.filter(({ id }) => !taken.has(id));
  const seen = new Set<RecordId>();
  return [...inForce].sort(olderFirst).flatMap(({ id: by, at, target }): TakenOut[] => {
    if (seen.has(target)) return [];
    seen.add(target);
    const visit = visits.find((each) => each.id === target);
    if (visit) return [{ kind: 'visit', visit, by, at }];
    const round = rounds.find((each) => each.id === target);
    return round ? [{ kind: 'round', round, by, at }] : [];
  });
}

/** Edits in force that took the pan off the rack or a photo away, and that no later one undoes. */
function editsThatTook(records: PanRecords): readonly TakenOut[] {
  const edits = [...withoutErased(records).edits].sort(olderFirst);
  const newestOf = (field: 'isRemoved' | 'photo'): PanEdit | undefined =>
    edits.findLast(({ fields }) => fields[field] !== undefined);
  const removed = newestOf('isRemoved');
  const photo = newestOf('photo');
  const before = edits.findLast(
    ({ id, fields }) => id !== photo?.id && fields.photo !== undefined && fields.photo !== null,
  )?.fields.photo;
  return [
    ...(removed?.fields.isRemoved
      ? [{ kind: 'pan', by: removed.id, at: removed.at } as const]
      : []),
    ...(photo?.fields.photo === null && before
      ? [{ kind: 'photo', photo: before, by: photo.id, at: photo.at } as const]
      : []),
  ];
}

function marksThatStand(records: PanRecords): readonly TakenOut[] {
  return [...standingMarks(records).values()].flatMap(({ id: by, at, note, mark }): TakenOut[] =>
    mark === 'skipped' ? [] : [{ kind: 'mark', note, mark, by, at }],
  );
}
