// Sound in and out apart from the microphone: files, speaker, voice, and a pan that can be struck without one.
import type { CutSound } from '../measurement/cut-sound';
import type { PanLayout } from '../pans/layout';
import type { Hertz, MidiNote } from '../tuning/units';

/** A sound file as samples. */
export interface OpenedSound {
  /** One channel, −1…1, at the file's own rate unless `resampled`. */
  readonly samples: Float32Array<ArrayBuffer>;
  readonly sampleRate: number;
  /** True if the browser's decoder had to be used and may have changed the rate. */
  readonly resampled: boolean;
}

export type OpenSoundResult =
  | { readonly kind: 'opened'; readonly sound: OpenedSound }
  | { readonly kind: 'unreadable'; readonly why: 'empty' | 'not-sound' | 'too-long' };

/** Opens sound files the user picked. `file` is the browser's File. */
export interface SoundFiles {
  open(file: { arrayBuffer(): Promise<ArrayBuffer> }): Promise<OpenSoundResult>;
}

/** The phone's speaker. Never throws: a phone that cannot play is simply silent. */
export interface Speaker {
  play(samples: Float32Array<ArrayBuffer>, sampleRate: number): void;
}

/** Plays one sound at a time. Never throws: a phone that cannot play is silent. */
export interface TonePlayer {
  /** Ends what is playing. Resolves when the sound is over, ended by another or cannot be played. */
  play(sound: CutSound): Promise<void>;
  /** A tone of `hz` that comes in softly and stays until `stop` or the next sound. Resolves like `play`. */
  hold(hz: Hertz): Promise<void>;
  stop(): void;
}

/** Tells what is to be known without the screen. Never throws: a phone that cannot stays silent. */
export interface Announcer {
  /** True if the phone has a voice of its own: voices from the network are never used. */
  hasVoice(): boolean;
  /** Resolves when it has been said or could not be said. */
  say(text: string): Promise<void>;
  /** Two short high beeps, above the notes of any pan. Resolves when they are over. */
  beep(): Promise<void>;
  /** Ends what is being said. */
  hush(): void;
}

/** A simulated pan that can be struck. */
export interface PracticeSource {
  readonly layout: PanLayout;
  /** The sound of one strike, −1…1, about 1.4 s; loudness 0…1. */
  strike(note: MidiNote, loudness: number, sampleRate: number): Float32Array<ArrayBuffer>;
}
