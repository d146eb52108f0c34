// What the settings keep for tonight's set: the band's tunes and what was chosen, as names of notes.

declare const pitchClassUnit: unique symbol;
/** A note's name without its octave: 0 = C, 1 = C♯ … 11 = B. */
export type PitchClass = number & { readonly [pitchClassUnit]: 'PitchClass' };

export const pitchClassOf = (note: number): PitchClass => (((note % 12) + 12) % 12) as PitchClass;

export const allPitchClasses: readonly PitchClass[] = Array.from({ length: 12 }, (_, k) =>
  pitchClassOf(k),
);

/** One of the band's tunes as the notes it uses. */
export interface SavedTune {
  readonly name: string;
  readonly notes: readonly PitchClass[];
}

/** What was chosen for tonight; nothing chosen means every note of the pan. */
export interface SetNeeds {
  /** Key notes of major keys. */
  readonly keys: readonly PitchClass[];
  /** Names of saved tunes. */
  readonly tunes: readonly string[];
  /** Tapped one by one. */
  readonly notes: readonly PitchClass[];
}

export const noNeeds: SetNeeds = { keys: [], tunes: [], notes: [] };

/** Longest name of a tune, characters, and how many tunes are kept at most (chosen, no source). */
export const longestTuneName = 60;
export const mostTunes = 200;
