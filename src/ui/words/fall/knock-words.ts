// What the knock check says: what is looked at after a fall, what to do about it, and what nobody must do.
import type { LookKind } from '../../../domain/records/look-kinds';

export interface LookWords {
  readonly question: string;
  /** Where to look, or why. */
  readonly hint: string;
  readonly toDo: string;
  readonly never: string;
  /** The thing in a few words, for lists: "sharp edges". */
  readonly short: string;
}

export const lookWords: Readonly<Record<LookKind, LookWords>> = {
  'sharp-edges': {
    question: 'Is there a sharp edge?',
    hint: 'Torn metal, a cut edge, chrome that flakes off. Look before you touch.',
    toDo: 'Put on gloves. Cover the sharp place with thick tape or cloth before anybody carries or plays the pan.',
    never: 'Do not file it, and do not bend it back.',
    short: 'something sharp',
  },
  crack: {
    question: 'Is there a crack?',
    hint: 'Look along the grooves, around every hole and along the rim. Use a light.',
    toDo: 'This pan is not played, not even softly: a crack grows. Pack it away and tell the band leader.',
    never: 'Do not strike it to find out. Do not glue or weld it.',
    short: 'a crack',
  },
  rim: {
    question: 'Is the rim bent?',
    hint: 'Look across the pan from the side. Is it still round and flat?',
    toDo: 'Go on with the check. The soft round shows which notes have moved.',
    never: 'Do not push the rim back into shape.',
    short: 'a bent rim',
  },
  skirt: {
    question: 'Does the skirt touch anything?',
    hint: 'A dent, or the skirt against a stand, a case or another drum.',
    toDo: 'Move the pan so that nothing touches it. Something that touches can make a note sound dead.',
    never: 'Do not beat a dent out.',
    short: 'the skirt touches something',
  },
  hangers: {
    question: 'Is anything loose, or hanging wrong?',
    hint: 'Hooks, cords, screws, the name plate. Shake the pan gently and listen.',
    toDo: 'Hang it up again so that it swings freely. Tighten loose parts with your fingers, or take them off and keep them.',
    never: 'Do not drill a new hole.',
    short: 'something loose or hanging wrong',
  },
  stand: {
    question: 'Is the stand bent or shaky?',
    hint: 'Push it lightly without the pan.',
    toDo: 'Use another stand. A second fall does more harm than the first.',
    never: 'Do not bend a stand while a pan hangs on it.',
    short: 'a bad stand',
  },
  heat: {
    question: 'Is the pan warm?',
    hint: 'From the sun or a hot van, now or in the last half hour. Feel the metal.',
    toDo: 'Put it in the shade for 20 to 30 minutes. Heat moves many notes, and most of them come back.',
    never: 'Do not cool it with water.',
    short: 'a warm pan',
  },
  water: {
    question: 'Is the bowl wet?',
    hint: 'Rain, dew, a spilt drink.',
    toDo: 'Wipe it dry with a soft cloth. When it is dry, tap “No”. Water makes the inner notes dull.',
    never: 'Do not dry it with a heater or a flame.',
    short: 'a wet bowl',
  },
};

export const knockWords = {
  title: 'Knock check',
  /** On the pan's page. */
  link: 'It was knocked',
  never:
    'Whatever you see: do not hammer, push, prise, heat, drill, straighten or polish anything.',
  step: (at: number, all: number) => `${at} of ${all}`,
  yes: 'Yes',
  no: 'No',
  next: 'Next',
  back: 'Back',
  notFound: (what: string) => `Not found: ${what}`,
  toDo: 'What to do',
  mustNot: 'What nobody must do',
  whereTitle: 'Where was it hit?',
  whereHint: 'Tap the place on the drawing. The round begins on that side.',
  whereNote: 'Nearest note',
  unknown: 'nobody knows',
  remarks: 'What happened',
  remarksHint: 'A few words: fell off the van.',
  seenTitle: 'What was seen',
  seenNothing: 'Nothing bad was seen.',
  change: 'Change the answers',
  softTitle: 'Now strike it softly',
  soft: 'The app names each note. Strike it softly three times with its own stick, then go on to the next one.',
  /** While the soft round runs. */
  softRound:
    'Strike softly. If a note sounds lower with every strike, stop striking it and tap “Dead”.',
  start: 'Start the soft round',
  waitTitle: 'Wait before you strike it',
  stopTitle: 'Do not strike it any more',
  keep: 'Keep what was seen',
  keepAndWait: 'Keep this and wait',
  lastLook: (when: string) => `Looked at ${when}.`,
  droppedTitle: 'A pan was dropped',
  whichPan: 'Which pan is it?',
  notHere: 'It is not in this list',
  whichKind: 'What kind of pan is it?',
  notHereHint: 'Tap its kind. It is put on the rack, and the check begins.',
  newName: (kind: string, when: string) => `${kind}, dropped ${when}`,
} as const;
