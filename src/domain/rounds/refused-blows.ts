// Counts the blows on the note that is asked for that became no strike: they tell a silent note and a rattle.
import type { Heard } from '../measurement/strike';
import type { RefusedBlows } from '../records/rack-records';
import type { MidiNote, Seconds } from '../tuning/units';

/** The blows of a round so far. */
export interface BlowsSoFar {
  readonly refused: ReadonlyMap<MidiNote, RefusedBlows>;
  /** The last thing that was heard: whatever follows at once belongs to the same blow. */
  readonly last: HeardBlow | null;
}

interface HeardBlow {
  /** Null while no note is asked for: what is heard then counts for no note. */
  readonly note: MidiNote | null;
  readonly at: Seconds;
  readonly kind: BlowKind;
}

/** What a blow was heard as; where one blow was heard as several things, the last in this order holds. */
const kinds = ['knock', 'other', 'several', 'strike'] as const;
type BlowKind = (typeof kinds)[number];

export const noBlowsSoFar: BlowsSoFar = { refused: new Map(), last: null };

const none: RefusedBlows = { knocks: 0, heardAsSeveral: 0 };

/**
 * Anything heard within this time belongs to the same blow, s: a rattle goes on after its first hit, and a roll
 * counts as one blow so that a quick hand is not taken for a rattle. The ear ends a roll after the same time (chosen,
 * no source).
 */
const oneBlow = 0.45;

/**
 * Counts what the ear settled on while `asked` was to be struck (null: nothing was asked for). Provisional results
 * change nothing.
 */
export function withBlowHeard(
  before: BlowsSoFar,
  heard: Heard,
  asked: MidiNote | null,
): BlowsSoFar {
  const kind = kindOf(heard);
  if (kind === null) return before;
  const { last } = before;
  const isSameBlow = last !== null && heard.at >= last.at && heard.at - last.at < oneBlow;
  if (!isSameBlow) {
    const refused = counted(before.refused, asked, kind, 1);
    return { refused, last: { note: asked, at: heard.at, kind } };
  }
  const isStronger = kinds.indexOf(kind) > kinds.indexOf(last.kind);
  const holds = isStronger ? kind : last.kind;
  const without = isStronger ? counted(before.refused, last.note, last.kind, -1) : before.refused;
  const refused = isStronger ? counted(without, last.note, kind, 1) : without;
  return { refused, last: { note: last.note, at: heard.at, kind: holds } };
}

/** The refused blows on a note; null where there were none. */
export const refusedBlowsOf = ({ refused }: BlowsSoFar, note: MidiNote): RefusedBlows | null => {
  const found = refused.get(note);
  return found && found.knocks + found.heardAsSeveral > 0 ? found : null;
};

/** The note is done: what is heard of it from now on is counted anew. */
export function blowsWithout({ refused, last }: BlowsSoFar, note: MidiNote): BlowsSoFar {
  const others = new Map([...refused].filter(([each]) => each !== note));
  // The rest of its last blow counts for no other note, nor for its next reading.
  return { refused: others, last: last?.note === note ? { ...last, note: null } : last };
}

function kindOf(heard: Heard): BlowKind | null {
  switch (heard.kind) {
    case 'knock':
      return 'knock';
    case 'refused':
      return heard.reason === 'too-fast' ? 'several' : 'other';
    case 'strike':
      return heard.provisional ? null : 'strike';
  }
}

function counted(
  refused: ReadonlyMap<MidiNote, RefusedBlows>,
  note: MidiNote | null,
  kind: BlowKind,
  by: 1 | -1,
): ReadonlyMap<MidiNote, RefusedBlows> {
  if (note === null || (kind !== 'knock' && kind !== 'several')) return refused;
  const { knocks, heardAsSeveral } = refused.get(note) ?? none;
  const now =
    kind === 'knock'
      ? { knocks: knocks + by, heardAsSeveral }
      : { knocks, heardAsSeveral: heardAsSeveral + by };
  return new Map(refused).set(note, now);
}
