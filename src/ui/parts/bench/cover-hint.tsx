// Which notes are to be covered, said before the first strike; and what was heard of them after it.

import { ringPairs, ringPartnersOf } from '../../../domain/pans/ring-partners';
import type { Reading } from '../../../domain/reading/reading';
import { displayName } from '../../../domain/tuning/note-names';
import type { MidiNote } from '../../../domain/tuning/units';
import { noteHeard, type OpenBench } from '../../../state/bench/open-bench';
import { noteListWords } from '../../words/list-words';
import { benchWords } from '../../words/measuring/bench-words';

/** A hand covers no more; those that ring along most are named. */
const mostCovered = 4;

export function CoverHint({
  bench,
  reading,
}: {
  readonly bench: OpenBench;
  readonly reading: Reading | null;
}) {
  const { layout } = bench.around;
  if (!layout) return null;
  const partners = ringPartnersOf(noteHeard(bench), ringPairs(layout));
  const notes = [...new Set(partners.map(({ other }) => other.note))].slice(0, mostCovered);
  const [only] = notes;
  if (only === undefined) return null;
  if (reading === null) {
    return (
      <p class="hint cover">
        {notes.length === 1
          ? benchWords.coverOne(displayName(only))
          : benchWords.cover(noteListWords(notes))}
      </p>
    );
  }
  const rings = new Set<MidiNote>(
    (reading.heard.at(-1)?.alsoRinging ?? []).flatMap(({ note }) => note ?? []),
  );
  const heard = notes.filter((note) => rings.has(note));
  return heard.length === 0 ? null : (
    <p class="aside cover">{benchWords.ringing(noteListWords(heard))}</p>
  );
}
