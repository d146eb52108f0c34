// All text of the interface, in one place and one voice, so that it can be translated.

import type { Loudness } from '../../domain/measurement/strike';
import type { MicrophoneFailure, MicrophoneState } from '../../domain/ports/microphone-ports';
import type { Disagreement } from '../../domain/reading/agreement';
import type { ThirdKind } from '../../domain/tuning/third-kind';
import type { Verdict } from '../../domain/tuning/verdict';
import type { Refusal } from '../../state/listening/readout-phase';
import { counted, pluralOf } from './count-words';
import { listWords } from './list-words';

export const words = {
  rack: 'Rack',
  rackAside: 'works without a network',
  listen: 'Listen',
  readout: 'What was heard',
  practice: 'Practice pan',
  openFile: 'Open a sound file',
  settings: 'Settings',
  back: 'Back',
  offline: {
    'not-ready': 'Getting ready for offline use',
    ready: 'Ready for offline use',
    'update-waiting': 'A new version is ready.',
    unsupported: 'This browser cannot keep the app for offline use.',
  },
  wrongAnswer: 'This network gave a wrong answer. Nothing was changed.',
  framed: 'Ringwright does not run inside another page.',
  openAlone: 'Open it by itself',
  updateNow: 'Update now',
  updateLater: 'It can be put in place when nothing is being measured, in no window of the app.',
  notKept: 'This phone does not keep the settings. They last until the app is closed.',
  earFailed: 'The measuring part stopped. Close the app and open it again.',
  strikeAny: 'strike any note',
  strikeNote: (note: string) => `strike ${note}`,
  idle: 'not listening',
  loadFailed: 'This part of the app could not be loaded.',
  reload: 'Load it again',
  cents: 'cents',
  fundamental: 'fundamental',
  octave: 'octave',
  third: { twelfth: 'twelfth', 'double-octave': 'double octave' } satisfies Record<
    ThirdKind,
    string
  >,
  thirdUnknown: 'third partial',
  flat: 'flat',
  sharp: 'sharp',
  good: 'good',
  inTune: 'in tune',
  notHeard: 'not heard',
  strikeCount: (count: number) => counted(count, 'strike'),
  settled: 'settled',
  strikesOf: (count: number, needed: number) => `strike ${count} of ${needed}`,
  oneMore: (count: number) => `${counted(count, 'strike')} · one more`,
  walking: 'walking',
  loudness: { soft: 'a little louder', good: '', loud: 'a little softer' } satisfies Record<
    Loudness,
    string
  >,
  unsure: 'unsure',
  secondLine: 'second line',
  inferred: 'inferred',
  inferredWhy:
    'This fundamental is too low for the phone. It follows from the partials above it and may be 20 cents off, so only a note farther off is called flat or sharp.',
  spread: (cents: string) => `Spread ${cents} cents`,
  spreadWhy: 'Spread: from the lowest to the highest strike.',
  howSure: 'How sure',
  leftOutCount: (count: number) => `${count} left out`,
  plusMinus: (partial: string, cents: string) => `${partial} ± ${cents} cents`,
  leftOut: (partial: Disagreement, cents: string) =>
    `One strike left out: its ${partial} was ${cents} off.`,
  tapNote: 'Tap it, then strike again.',
  glide: (cents: string) => `The pitch glides ${cents} cents right after the strike.`,
  octaveUp: 'It is an octave higher',
  octaveDown: 'It is an octave lower',
  nameNote: 'Note to strike',
  anyNote: 'any note',
  lookInside: 'Look inside',
  workOn: (note: string) => `Work on ${note}`,
  fileReading: 'Reading the file',
  fileRead: (heard: number) =>
    heard === 0
      ? 'No strike was heard in this file.'
      : `${pluralOf(heard, 'One strike was', `${heard} strikes were`)} heard in this file.`,
  fileResampled:
    'This kind of file had to be converted by the browser, so very small errors are possible.',
  fileUnreadable: {
    empty: 'This file is empty. Choose another one.',
    'not-sound': 'This file is not a sound that can be read here. Choose a WAV file.',
    'too-long': 'This file is longer than ten minutes. Choose a shorter one.',
  },
  practiceHint: 'simulated: tap a note',
  practiceNote: (note: string) => `Strike ${note}`,
  cautionLink: 'Hammering steel is loud: wear hearing protection. More cautions',
} as const;

/** The sentence for each thing the ear refused. */
export const refusalWords: Readonly<Record<Refusal, string>> = {
  'too-soft': 'too soft',
  'too-loud': 'too loud',
  'lost-audio': 'the phone lost sound, strike again',
  'too-fast': 'too fast, one strike at a time',
  unclear: 'not clear, strike again',
  'short-ring': 'short ring: strike the middle again',
  'which-note': 'which note?',
  'wrong-note': 'not this note',
  again: 'again',
  knock: 'knock or very short ring',
};

/** The big sentence and what to do, for a strike of another note than the expected one. */
export const wrongNoteWords = (note: string) => ({
  says: `Not this note: ${note} is ringing.`,
  todo: 'Damp it and strike again.',
});

/** Two lines at the octave: what was heard, and the damping test. The partner is null where it has no name. */
export const twoOctavesWords = (apart: string, partner: string | null) => ({
  says: `Two lines at the octave, ${apart} apart.`,
  todo:
    partner === null
      ? 'Damp the other notes and strike again.'
      : `Lay a finger on ${partner} and strike again.`,
});

/** Two lines at the fundamental, and what may tell which of them is the note. */
export const twoFundamentalsWords = (beatHz: number) => ({
  says: `Two lines at the fundamental, ${wholeHz(beatHz)} Hz apart.`,
  todo: 'Strike nearer the middle, damp the other notes, and compare three strikes.',
});

/** … and at the third partial, for who asks. */
export const twoThirdsWords = (third: string, beatHz: number): string =>
  `${third}: two lines, ${wholeHz(beatHz)} Hz apart`;

const wholeHz = (hz: number): string => Math.max(1, Math.round(hz)).toFixed(0);

/** A note whose pitch goes one way from strike to strike. */
export const walkingWords = (centsPerStrike: number) => ({
  says: `Walking: each strike ${centsPerStrike < 0 ? 'lower' : 'higher'}.`,
  todo: 'Stop and let it rest.',
  why: `It moves ${tenths(Math.abs(centsPerStrike))} cents a strike, so only the last one counts. Do not hammer a note that does not hold still: it may be cracked.`,
});

export interface MicrophoneWords {
  readonly sentence: string;
  /** The one button that leads on. */
  readonly button: string;
}

/** What the state of the microphone means, and what to do about it. */
export const microphoneWords = (state: MicrophoneState): MicrophoneWords =>
  state.kind === 'failed'
    ? { sentence: microphoneFailed[state.why], button: 'Try again' }
    : microphoneIs[state.kind];

const microphoneFailed: Readonly<Record<MicrophoneFailure, string>> = {
  insecure:
    'Browsers give the microphone only to pages whose address starts with https. Open the app at such an address.',
  'wrong-rate':
    'The sound arrives at the wrong speed, so every pitch would be wrong. Switch off wireless earphones, then try again.',
  unknown: 'The microphone could not be started. Close other apps that use it, then try again.',
};

const microphoneIs: Readonly<Record<Exclude<MicrophoneState['kind'], 'failed'>, MicrophoneWords>> =
  {
    idle: { sentence: 'The microphone is off.', button: 'Listen' },
    asking: {
      sentence: 'Allow the microphone, so that the strike can be heard.',
      button: 'Ask again',
    },
    priming: { sentence: 'Getting ready.', button: 'Stop' },
    listening: { sentence: 'Listening.', button: 'Stop' },
    interrupted: { sentence: 'Something else took the microphone.', button: 'Listen again' },
    silent: {
      sentence: 'The microphone gives no sound at all. Is it covered or switched off?',
      button: 'Listen again',
    },
    lost: { sentence: 'The microphone was lost.', button: 'Listen again' },
    denied: {
      sentence:
        'The microphone is not allowed. Allow it for this app in the browser’s settings, then try again.',
      button: 'Try again',
    },
    absent: {
      sentence: 'No microphone was found. Plug one in, then try again.',
      button: 'Try again',
    },
    'other-window': {
      sentence: 'Another window of this app has the microphone. Stop it there, then try again.',
      button: 'Try again',
    },
    busy: {
      sentence: 'Another app is using the microphone. Close it, then try again.',
      button: 'Try again',
    },
  };

export const processingWords = (kinds: readonly string[]): string =>
  `The phone keeps its ${listWords(kinds)} on. Readings may be less exact.`;

export interface VerdictWords {
  readonly lines: readonly string[];
  readonly number: string | null;
}

/** The lines of the big word for a verdict, and the number under it (cents, without a sign). */
export function verdictWords(verdict: Verdict): VerdictWords {
  if (verdict.kind === 'aligned') return { lines: ['partials', 'aligned'], number: null };
  if (verdict.kind === 'in-tune') return { lines: [words.inTune], number: null };
  if (verdict.kind === 'octave-open') return { lines: [words.octave, words.unsure], number: null };
  if (verdict.kind === 'inferred') {
    return { lines: [words.fundamental, words.inferred], number: null };
  }
  const number = String(Math.round(Math.abs(verdict.cents)));
  switch (verdict.kind) {
    case 'flat':
    case 'sharp':
      return { lines: [words[verdict.kind]], number };
    case 'octave-flat':
    case 'octave-sharp':
      return { lines: [words.octave, directionWord(verdict.cents)], number };
    case 'third-flat':
    case 'third-sharp':
      return {
        lines: [...words.third[verdict.third].split(' '), directionWord(verdict.cents)],
        number,
      };
  }
}

export const directionWord = (cents: number): string => (cents < 0 ? words.flat : words.sharp);

/** Whole cents with a sign: "−9", "+4", "0". */
export function signedCents(cents: number): string {
  const whole = Math.round(Math.abs(cents));
  return whole === 0 ? '0' : cents < 0 ? `−${whole}` : `+${whole}`;
}

/** Cents to a tenth, without a sign: "0.5". */
export const tenths = (cents: number): string => Math.abs(cents).toFixed(1);

/** A standard error to a tenth, never less than it is: "0.1" for 0.04. */
export const tenthsUp = (cents: number): string => tenths(Math.ceil(cents * 10 - 1e-6) / 10);
