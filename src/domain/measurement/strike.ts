// What the ear reports: strikes with their partials, knocks, and strikes it refused.
import type { ThirdKind } from '../tuning/third-kind';
import type { Cents, Decibels, Hertz, MidiNote, Seconds } from '../tuning/units';

/** A part of a strike's sound, seconds after the onset. */
export interface HeardWindow {
  readonly from: Seconds;
  readonly to: Seconds;
}

/** One partial of a struck note as measured by itself. */
export interface MeasuredPartial {
  /** Settled frequency: what was heard in `window`, nothing beyond it. */
  readonly hz: Hertz;
  /** Missing in what was measured before windows were kept. */
  readonly window?: HeardWindow;
  /** Against equal temperament at the band's A4: partial k against k times the note's target. */
  readonly cents: Cents;
  /** One standard error of the frequency. */
  readonly sigmaCents: Cents;
  /** Time constant: amplitude falls by 1/e in this time. */
  readonly decaySeconds: Seconds;
  /** Level at the start of the measuring window, dB relative to full scale. */
  readonly levelDb: Decibels;
}

/** A partial above the fundamental, also set against the note's own fundamental. */
export interface UpperPartial extends MeasuredPartial {
  /** Against 2, 3 or 4 times the measured fundamental (alignment). */
  readonly centsFromOwn: Cents;
}

export interface ThirdPartial extends UpperPartial {
  readonly kind: ThirdKind;
}

/**
 * A second line at the struck note's octave, most likely the fundamental of the octave partner: which of
 * the two is the struck note's own octave becomes clear when the partner is damped.
 */
export interface OctaveRival extends UpperPartial {
  /** The partner, or null where the pan has no such note. */
  readonly note: MidiNote | null;
  /** Beats between the two lines, per second. */
  readonly beatHz: Hertz;
}

/**
 * A second line beside a partial: another mode of the note, or of one that rings along. Which of the two is the note
 * becomes clear when it is struck elsewhere, or when the partner is damped.
 */
export interface SecondLine extends MeasuredPartial {
  /** Beats between the two lines, per second. */
  readonly beatHz: Hertz;
}

/** How loud a strike was for this microphone in this room; soft and loud ones weigh less. */
export type Loudness = 'soft' | 'good' | 'loud';

/** A line that is no partial of the struck note: most likely a ring partner; or its own third, too faint to be measured. */
export interface RingingLine {
  readonly hz: Hertz;
  readonly levelDb: Decibels;
  /** The note it most likely comes from, and which of its partials it is. */
  readonly note: MidiNote | null;
  readonly partial: 1 | 2 | 3 | 4 | null;
}

export interface Strike {
  readonly kind: 'strike';
  /** Number of the sounding event since listening began; provisional and settled share it. */
  readonly event: number;
  /** First verdict from a short window, to be replaced by the settled one of the same event. */
  readonly provisional: boolean;
  /** Onset, from the first sample of this listening. */
  readonly at: Seconds;
  readonly note: MidiNote;
  readonly fundamental: MeasuredPartial;
  /**
   * The other one of two lines at the fundamental, where there are two; `fundamental` is the stronger one. Missing, as
   * `thirdRival` is, where only the octave was looked at and it is not known.
   */
  readonly fundamentalRival?: SecondLine | null;
  /** The fundamental was too low for the microphone; it follows from the octave and the third partial. */
  readonly isInferred: boolean;
  /** The struck note's own octave, or the likelier of two lines. */
  readonly octave: UpperPartial | null;
  /** The other one of two lines at the octave, where there are two. */
  readonly octaveRival: OctaveRival | null;
  readonly third: ThirdPartial | null;
  /** The other one of two lines at the third partial, where there are two. */
  readonly thirdRival?: (SecondLine & UpperPartial) | null;
  /** How far the fundamental was above (+) or below (−) its settled value right after the onset. */
  readonly glideCents: Cents;
  /** Peak level of the strike, dB relative to full scale. */
  readonly peakDb: Decibels;
  readonly loudness: Loudness;
  /**
   * Noise between 1 and 6.5 kHz that comes and goes with the strike and that no line explains, against the strike's own
   * sound, dB; what the room had before the strike is taken off. Missing where it was not measured.
   */
  readonly buzzDb?: Decibels;
  readonly alsoRinging: readonly RingingLine[];
}

export interface Knock {
  readonly kind: 'knock';
  readonly event: number;
  readonly at: Seconds;
}

export type RefusalReason =
  | 'too-soft'
  | 'too-loud'
  | 'lost-audio'
  | 'too-fast'
  | 'unclear'
  /** It may have been a strike with a short ring, or a knock: nobody can tell. */
  | 'short-ring'
  /** It may have been one of several notes (`candidates`): asked, not guessed. */
  | 'which-note'
  | 'wrong-note';

export interface RefusedStrike {
  readonly kind: 'refused';
  readonly event: number;
  readonly at: Seconds;
  readonly reason: RefusalReason;
  /** The note it seemed to be, where that is known (always for `wrong-note`). */
  readonly note: MidiNote | null;
  /** Notes it may have been, likeliest first; more than one only for `which-note`. */
  readonly candidates: readonly MidiNote[];
}

export type Heard = Strike | Knock | RefusedStrike;

/** What the ear is told beforehand. */
export interface ListeningContext {
  /** The band's A4. */
  readonly a4: Hertz;
  /** The note that should be struck next, or null for any. A different note is refused as `wrong-note`. */
  readonly expected: MidiNote | null;
  /** Notes of the pan, or null when no pan is chosen. */
  readonly notes: readonly MidiNote[] | null;
  /**
   * A pan is being checked after a knock, and the expected note may be choked: it then counts as a strike even if it
   * rings so briefly that it could just as well be a blow on wood. Without an expected note this changes nothing.
   */
  readonly mayBeChoked?: boolean;
  /** Partials of the pan's notes as they were last measured, where there are any. */
  readonly known?: readonly KnownNote[];
}

/** The partials of one note as last measured. */
export interface KnownNote {
  readonly note: MidiNote;
  readonly fundamentalHz: Hertz;
  readonly octaveHz: Hertz | null;
}
