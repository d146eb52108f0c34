// What the knock check says: what is looked at after a fall, what to do about it, and what nobody must do.
import type { LookKind } from '../../../domain/records/look-kinds';
import { counted } from '../count-words';

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
    hint: 'Look before you touch: torn metal, a cut edge, chrome that flakes off.',
    toDo: 'Put on gloves. Cover the sharp place with thick tape or cloth before anybody carries or plays the pan.',
    never: 'Do not file it, and do not bend it back.',
    short: 'something sharp',
  },
  crack: {
    question: 'Is there a crack?',
    hint: 'With a light, look for a thin dark line along the grooves, around the holes and along the rim.',
    toDo: 'This pan is not played, not even softly: a crack grows. Pack it away and tell the band leader.',
    never: 'Do not strike it to find out. Do not glue or weld it.',
    short: 'a crack',
  },
  rim: {
    question: 'Is the rim bent?',
    hint: 'Look from the side for a dent or a twist.',
    toDo: 'Go on with the check. The soft round shows which notes have moved.',
    never: 'Do not push the rim back into shape.',
    short: 'a bent rim',
  },
  skirt: {
    question: 'Is the skirt dented, or does it touch anything?',
    hint: 'Walk around it and look for a dent, or a place that leans on a stand, a case or a drum.',
    toDo: 'Move the pan so that nothing touches it. Something that touches can make a note sound dead.',
    never: 'Do not beat a dent out.',
    short: 'a skirt that is dented or touches something',
  },
  hangers: {
    question: 'Is anything loose, or hanging wrong?',
    hint: 'Shake the pan gently, and listen and look at hooks, cords and screws.',
    toDo: 'Hang it up again so that it swings freely. Tighten loose parts with your fingers, or take them off and keep them.',
    never: 'Do not drill a new hole.',
    short: 'something loose or hanging wrong',
  },
  stand: {
    question: 'Is the stand bent or shaky?',
    hint: 'Take the pan off, then push the stand lightly and look along its legs.',
    toDo: 'Use another stand. A second fall does more harm than the first.',
    never: 'Do not bend a stand while a pan hangs on it.',
    short: 'a bad stand',
  },
  heat: {
    question: 'Is the pan warm?',
    hint: 'Feel the metal: the sun or a hot van may have warmed it in the last half hour.',
    toDo: 'Put it in the shade for 20 to 30 minutes. Heat moves many notes, and most of them come back.',
    never: 'Do not cool it with water.',
    short: 'a warm pan',
  },
  water: {
    question: 'Is the bowl wet?',
    hint: 'Look and feel inside for rain, dew or a spilt drink.',
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
  unsure: 'Not sure',
  unsureToDo:
    'Take a photo, and ask somebody to look with you. If nobody is there, go on: the app stays on the safe side.',
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
  notSure: 'Not sure',
  /** With nobody around who knows. */
  nextTitle: 'What to do now',
  nextSteps: {
    strike: [
      'Hang the pan up in the shade, as it is played.',
      'Strike the notes softly. The app shows which one comes next. It takes a few minutes, and you need not know how to play.',
      'Then the app says whether it can be played, and without which notes. Send that to the band leader.',
    ],
    wait: [
      'Put it right, or let it stand, as it says below.',
      'Look again after that: the app says when.',
      'Until then play another pan.',
    ],
    stop: [
      'Nobody plays or strikes this pan. Pack it away so that nothing leans on it.',
      'Play another pan tonight.',
      'Send the answer to the band leader: the app makes the picture.',
    ],
  },
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
  dontKnow: 'I don’t know',
  howMany: 'How many drums does it have?',
  howManyHint: 'Count the drums that one player stands at.',
  drums: (count: number) => counted(count, 'drum'),
  fits: 'Which picture is most like it?',
  fitsHint: 'Count the notes of a drum: the ovals in the metal.',
  noneFits: 'None of these: go on without a drawing',
  notes: (notes: number, drums: number) =>
    drums === 1 ? counted(notes, 'note') : `${counted(drums, 'drum')}, ${counted(notes, 'note')}`,
  unknownPan: 'Pan',
  notHereHint: 'Tap the picture that is most like it. It is put on the rack, and the check begins.',
  newName: (kind: string, when: string) => `${kind}, dropped ${when}`,
} as const;
