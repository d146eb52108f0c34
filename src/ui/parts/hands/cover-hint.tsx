// Which notes are to be covered, said before the first strike; and what was heard of them after it.

import type { RingingLine, Strike } from '../../../domain/measurement/strike';
import { ringPairs, ringPartnersOf } from '../../../domain/pans/ring-partners';
import type { Reading } from '../../../domain/reading/reading';
import type { MidiNote } from '../../../domain/tuning/units';
import { noteHeard, type OpenBench } from '../../../state/bench/open-bench';
import { noteListWords } from '../../words/list-words';
import { benchWords } from '../../words/measuring/bench-words';

/** A hand covers no more; those that ring along most are named. */
const mostCovered = 4;

/** A line fainter than this against the note's own fundamental disturbs no verdict, dB (chosen, no source). */
const faintDb = -20;

/** Whether what rings along matters for this verdict: it is loud, or the note shows two lines that it may explain. */
const disturbs = (line: RingingLine, strike: Strike): boolean =>
  line.levelDb - strike.fundamental.levelDb > faintDb ||
  strike.octaveRival !== null ||
  Boolean(strike.fundamentalRival);

const isSameName = (one: MidiNote, other: MidiNote): boolean => (one - other) % 12 === 0;

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
  if (notes.length === 0) return null;
  if (reading === null) {
    return (
      <p class="hint cover">
        {benchWords.cover(
          noteListWords(notes.filter((note) => isSameName(note, noteHeard(bench)))),
          noteListWords(notes.filter((note) => !isSameName(note, noteHeard(bench)))),
        )}
      </p>
    );
  }
  const strike = reading.heard.at(-1);
  const rings = new Set<MidiNote>(
    (strike?.alsoRinging ?? []).flatMap((line) =>
      strike && disturbs(line, strike) ? (line.note ?? []) : [],
    ),
  );
  const heard = notes.filter((note) => rings.has(note));
  return heard.length === 0 ? null : (
    <p class="aside cover">{benchWords.ringing(noteListWords(heard))}</p>
  );
}
