// What happened to a pan, as far as anybody wrote it down.
import type { DamageKind } from '../knock-check/damage-evidence';
import type { KnockSigns } from '../knock-check/round-signs';
import type { PanRecords } from '../records/rack-records';
import { standingMarks } from '../records/standing/standing-marks';
import { withoutErased } from '../records/standing/without-erased';
import { tunerVisits } from '../rounds/tuner-baseline';
import type { Instant, MidiNote } from '../tuning/units';
import type { SheetEvent, ShownSign } from './sheet';

const toldMarks = ['cracked', 'dead', 'buzzing'] as const;

/** What happened at `since` or later, the newest first; marks that stand, all notes marked alike on one day together. */
export function sheetEvents(
  records: PanRecords,
  since: number,
  heard: KnockSigns | null,
): readonly SheetEvent[] {
  const knocks = withoutErased(records).knockChecks.map(
    (check): SheetEvent => ({
      kind: 'knock',
      at: check.at,
      check,
      signs: heard?.check.id === check.id ? shownSigns(heard) : null,
    }),
  );
  const visits = tunerVisits(records)
    .filter(({ startsBaseline }) => !startsBaseline)
    .map((visit): SheetEvent => ({ kind: 'visit', at: visit.visitedAt, visit }));
  return [...knocks, ...visits, ...markEvents(records)]
    .filter(({ at }) => at >= since)
    .sort((one, other) => other.at - one.at);
}

function shownSigns({ signs }: KnockSigns): readonly ShownSign[] {
  const bySign = new Map<DamageKind, MidiNote[]>();
  for (const [note, found] of [...signs].sort(([one], [other]) => one - other)) {
    for (const { kind } of found) bySign.set(kind, [...(bySign.get(kind) ?? []), note]);
  }
  return [...bySign].map(([sign, notes]) => ({ sign, notes }));
}

const hour = 3600 * 1000;
/** Marks made this close together are one round's and are told as one (own choice). */
const together = 6 * hour;

function markEvents(records: PanRecords): readonly SheetEvent[] {
  const standing = [...standingMarks(records).values()].sort((one, other) => one.at - other.at);
  return toldMarks.flatMap((kind) => {
    const events: Extract<SheetEvent, { readonly kind: 'marked' }>[] = [];
    let begun: Instant | null = null;
    for (const { note, mark, at } of standing) {
      if (mark !== kind) continue;
      const last = events.at(-1);
      if (last && begun !== null && at - begun <= together) {
        events[events.length - 1] = { ...last, notes: [...last.notes, note].sort((a, b) => a - b) };
      } else {
        begun = at;
        events.push({ kind: 'marked', at, mark: kind, notes: [note] });
      }
    }
    return events;
  });
}
