// What the walks look for on the screens of the app: all its words and marks, in one place.
import { button, field, file, link, row } from './find-on-page';

export const seen = {
  ready: 'Ready for offline use',
  listen: link('Listen'),
  listening: 'Listening.',
  /** What leads back to listening, after the app has stopped because it was given too little sound. */
  listenAgain: [button('Listen again'), button('Try again'), button('Listen')],
  practice: link('Practice pan'),
  practiceNote: button('Strike D4'),
  practiceNoteName: 'D4',
  back: link('Back'),
  rack: link('Rack'),
  addPan: link('Add a pan'),
  takeLayout: button('Take this layout'),
  panName: field('Name of the pan'),
  keepPan: button('Put it on the rack'),
  pan: row('Heron'),
  panTitle: 'Heron',
  startRound: link('Start a round'),
  beginRound: button('Start and listen'),
  goOnWithRound: link('Go on with the round'),
  goOnListening: button('Go on listening'),
  finishRound: button('Finish the round'),
  heard: (count: number) => `${count} of 29 heard`,
  sheet: link('Sheet for the tuner'),
  print: button('Print or save as PDF'),
  backUp: link('Back up'),
  makeFile: button('Make the file'),
  saveFile: button('Save or send the file'),
  takeFileIn: link('Load or restore a file'),
  chooseFile: file('Choose a file'),
  inFile: (count: number) => `1 round, ${count} readings`,
  takeOver: button('Take this pan over'),
  takenOver: 'Heron is on your rack now.',
  update: button('Update now'),
} as const;

export interface ReadoutSeen {
  /** `settled` once enough strikes agree. */
  readonly state: string;
  readonly note: string;
  readonly verdict: string;
  /** Cents to a hundredth, as text; empty if there is none. */
  readonly fundamental: string;
  readonly octave: string;
  readonly third: string;
  readonly strikes: number;
}

/** In the page: what the readout says; null where there is none. */
export function readoutSeen(): ReadoutSeen | null {
  const readout = document.querySelector<HTMLElement>('[aria-label="What was heard"]');
  if (!readout) return null;
  const { state = '', note = '', verdict = '', strikes = '0', ...cents } = readout.dataset;
  return {
    state,
    note,
    verdict,
    strikes: Number(strikes),
    fundamental: cents['fundamentalCents'] ?? '',
    octave: cents['octaveCents'] ?? '',
    third: cents['thirdCents'] ?? '',
  };
}

export interface RoundSeen {
  readonly done: number;
  /** The note that is asked for, as its MIDI number; 0 if none is. */
  readonly next: number;
}

/** In the page: how far the round is; null where there is none. */
export function roundSeen(): RoundSeen | null {
  const round = document.querySelector<HTMLElement>('main.round');
  return round && { done: Number(round.dataset['done']), next: Number(round.dataset['next']) };
}

/** In the page: the notes of a result and the cents of their fundamentals from the band's pitch. */
export function resultSeen(): readonly { readonly note: number; readonly cents: number }[] {
  return [...document.querySelectorAll<HTMLElement>('.note-row')].flatMap(({ dataset }) => {
    const { note = '', cents = '' } = dataset;
    return cents === '' ? [] : [{ note: Number(note), cents: Number(cents) }];
  });
}

/** In the page: all text of the screen. */
export const textSeen = (): string =>
  (document.querySelector('main')?.textContent ?? '').replace(/\s+/g, ' ');

/** In the page: the version that two-versions.ts has put into it. */
export const versionSeen = (): string => document.documentElement.dataset['version'] ?? '';
