// Two lines at one partial: how often they beat, and which of them is the note's own.
import type {
  ListeningContext,
  MeasuredPartial,
  OctaveRival,
  SecondLine,
  UpperPartial,
} from '../../domain/measurement/strike';
import { hertz, type MidiNote, midiNote } from '../../domain/tuning/units';
import { isSecondOwn } from './own-octave-line';

/** A second line with how often it beats against the one at `hz`. */
export const withBeat = <T extends MeasuredPartial>(rival: T, hz: number): T & SecondLine => ({
  ...rival,
  beatHz: hertz(Math.abs(rival.hz - hz)),
});

/** The own octave and its rival, in the likelier order; the rival is most likely the pan's note an octave up. */
export function ownFirst(
  octave: UpperPartial | null,
  rival: UpperPartial | null,
  struck: MidiNote,
  context: ListeningContext,
): { readonly octave: UpperPartial | null; readonly octaveRival: OctaveRival | null } {
  if (!octave || !rival) return { octave, octaveRival: null };
  const isSecond = isSecondOwn(octave.hz, rival.hz, struck, context) === true;
  const partner = midiNote(struck + 12);
  return {
    octave: isSecond ? rival : octave,
    octaveRival: {
      ...(isSecond ? octave : rival),
      note: context.notes === null || context.notes.includes(partner) ? partner : null,
      beatHz: hertz(Math.abs(rival.hz - octave.hz)),
    },
  };
}
