// What a drawn note says beside its name. Sign, shape and number carry the meaning; the tone only underlines it.

export interface NoteMark {
  /** Under the name, a few signs: "−9", "dead"; empty for none. Longer texts are drawn smaller. */
  readonly text: string;
  /** Of the oval: a plain outline, a dotted one, half or wholly filled, or crossed out. */
  readonly shape: 'outline' | 'dotted' | 'half' | 'filled' | 'crossed';
  readonly tone: 'plain' | 'true' | 'low' | 'high' | 'stop';
}

/** The mark of a note, or null for a note that is drawn plainly. */
export type MarkOf<Note> = (note: Note) => NoteMark | null;
