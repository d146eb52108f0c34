// How large the note is drawn: a bigger field sounds lower, so flat is too large and sharp too small.

export interface NoteOval {
  /** Half axes of the measured shape: the long axis shows the octave, the short one the third partial. */
  readonly rx: number;
  readonly ry: number;
}

/** Half axes of the target outline, in drawing units. */
export const targetOval: NoteOval = { rx: 118, ry: 74 };
/** Growth of an axis per cent of flatness. */
const growthPerCent = 0.01;
const smallest = 0.66;
const largest = 1.34;

const scaleFor = (cents: number): number =>
  Math.min(largest, Math.max(smallest, 1 - growthPerCent * cents));

/** The measured oval: whole = fundamental, long axis also octave, short axis also third (cents; null: unknown, drawn true). */
export function measuredOval(
  fundamental: number,
  octave: number | null,
  third: number | null,
): NoteOval {
  return {
    rx: targetOval.rx * scaleFor(fundamental + (octave ?? 0)),
    ry: targetOval.ry * scaleFor(fundamental + (third ?? 0)),
  };
}
