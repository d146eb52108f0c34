// Drums of a tenor bass with notes as large as they were measured.
import { type MidiNote, midiNote } from '../../tuning/units';
import type { Drum, NotePlace } from '../layout';
import type { OvalSize } from '../place-notes';

/** Face diameter 22¾ in. */
const rimMillimetres = (22.75 * 25.4) / 2;

/** Length along the rim and across it in mm, for each group of four notes from F2 upwards. */
const lengths: Readonly<Record<number, readonly [along: number, across: number]>> = {
  // Not measured: continued from the rows below and above.
  [-1]: [420, 255],
  // U. Kronman, Steel Pan Tuning, 1992: G2–B♭2, B2–D3, D♯3–F♯3, G3–B♭3, B3–D4; middle of each stated range.
  0: [395, 247.5],
  1: [345, 230],
  2: [290, 220],
  3: [230, 205],
  4: [200, 200],
  // Not measured.
  5: [190, 190],
};

const lowestMeasured = 43;

/** Half axes of a tenor bass note, `drawn` times as large as measured, as parts of the rim's radius. */
function sizeOf(note: MidiNote, drawn: number): OvalSize {
  const [along, across] = lengths[Math.floor((note - lowestMeasured) / 4)] ?? [200, 200];
  const scale = drawn / 2 / rimMillimetres;
  return { along: along * scale, across: across * scale };
}

export interface TenorBassSpot {
  readonly ring: NotePlace['ring'];
  readonly clock: number;
  /** Without it the note lies along the rim. */
  readonly radius?: number;
}

/** A drum of one augmented triad: every fourth semitone from `lowest`, one at each spot. */
export const tenorBassDrum = (
  name: string,
  lowest: MidiNote,
  spots: readonly TenorBassSpot[],
  drawn: number,
): Drum => ({
  name,
  notes: spots.map(({ ring, clock, radius }, k) => {
    const note = midiNote(lowest + 4 * k);
    const size = sizeOf(note, drawn);
    return { note, ring, clock, radius: radius ?? 0.975 - size.across, ...size };
  }),
});
