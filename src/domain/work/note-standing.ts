// How one note stands after a reading, in one word: the words of the map, the rack and the sheet.

export type NoteStanding =
  /** Everything within the "good" tolerance. */
  | 'good'
  /** Not good, but can be played. */
  | 'playable'
  /** Clearly out of tune. */
  | 'out'
  /** So far out, unstable or marked that the note is not to be featured. */
  | 'avoid'
  /** No reading yet. */
  | 'unread';
