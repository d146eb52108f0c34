// What is said about the inside of one strike.
import type {
  PartInside,
  PartName,
  PartSound,
  Slower,
} from '../../../domain/measurement/strike-inside';
import { signedCents, words } from '../words';

export const insideWords = {
  title: (note: string) => `Inside ${note}`,
  why: 'One strike holds several notes. Hear each of them alone, taken out of your own strike.',
  opening: 'Taking the strike apart.',
  none: 'Nothing to look into yet: strike a note first.',
  gone: 'The sound of this strike is not there any more. Strike the note again.',
  back: 'Back to the strike',
  backToListening: 'Back, and listen on',
  sounds: { alone: 'Hear it', target: 'Its target', both: 'Both' } satisfies Record<
    PartSound,
    string
  >,
  speed: 'How fast',
  speeds: { 1: 'As it was', 2: 'Half as fast', 4: 'A quarter' } satisfies Record<Slower, string>,
  slowed:
    'Slower, each sound lasts longer but keeps its pitch, so it beats against its target as often as before. All are equally loud.',
  deep: 'The phone’s own loudspeaker can hardly play this low: use headphones below 200 Hz.',
  picture:
    'The line runs from the strike to its end. Up is sharp, down is flat, thick is loud. Dashed: the target. The pale stretch is where it was measured.',
  missing: 'The fundamental was too low for this microphone, so it cannot be heard alone.',
  asTable: 'As a table',
  time: 'After',
  seconds: (at: number) => `${at.toFixed(2)} s`,
  twoLines: (own: number, other: number) =>
    `Two lines here, ${signedCents(own)} and ${signedCents(other)}: they sound as one that beats.`,
  moves: {
    fundamental: 'The whole field moves.',
    octave: 'The ends of the long way move.',
    third: 'The ends of the short way move.',
  } satisfies Record<PartName, string>,
} as const;

export const partWords = (name: PartName, third: keyof typeof words.third | null): string =>
  name === 'third'
    ? third === null
      ? words.thirdUnknown
      : words.third[third]
    : name === 'octave'
      ? words.octave
      : words.fundamental;

/** "−6, 3.0 beats a second against its target". */
export const partSentence = ({ cents, beatHz }: PartInside): string =>
  `${signedCents(cents)} · ${beatHz.toFixed(1)} beats a second against its target`;
