// A player in the page: its strikes reach the app through the microphone, and it strikes what the screen asks for.
import type { Page } from 'playwright-core';
import { notesOf } from '../../src/domain/pans/layout';
import type { PracticePan } from '../../src/practice-pan/practice-pan';

export const struckRate = 48_000;

interface StruckPan {
  /** What was struck, and what the readout said, with the times (ms of performance.now()). */
  readonly course: { readonly at: number; readonly what: string }[];
  /**
   * Strikes of the notes as 16-bit samples in base64, instead of those that these notes had. A note with several is
   * struck with one after the other, and then with the last one.
   */
  load(strikes: readonly { readonly note: number; readonly samples: string }[], rate: number): void;
  /**
   * Strikes the note that the round asks for, again and again, until nothing is asked or `until` notes are done: as
   * soon as the app has taken the strike before, and after `gap` s at the latest.
   */
  follow(gap: number, until: number): Promise<void>;
  /** Strikes these notes one after the other, `gap` s apart. */
  strike(notes: readonly number[], gap: number): Promise<void>;
}

declare global {
  interface Window {
    struckPan: StruckPan;
  }
}

/** Runs in the page before the app: the microphone hears what the player strikes, over the noise of a quiet room. */
export function installStruckPan(): void {
  // An empty page, as a new window is at first, has no microphone.
  if (!('mediaDevices' in navigator)) return;
  const sounds = new Map<number, AudioBuffer[]>();
  const struck = new Map<number, number>();
  let context: AudioContext | null = null;
  let air: MediaStreamAudioDestinationNode | null = null;
  const open = () => {
    context ??= new AudioContext({ sampleRate: 48_000 });
    void context.resume();
    if (!air) {
      air = context.createMediaStreamDestination();
      const room = context.createBuffer(1, 2 * context.sampleRate, context.sampleRate);
      const noise = room.getChannelData(0);
      for (let k = 0; k < noise.length; k++) noise[k] = 2e-4 * (Math.random() - 0.5);
      const source = new AudioBufferSourceNode(context, { buffer: room, loop: true });
      source.connect(air);
      source.start();
    }
    return { context, air };
  };
  navigator.mediaDevices.getUserMedia = async () => open().air.stream.clone();
  const pause = (seconds: number) => new Promise((done) => setTimeout(done, 1000 * seconds));
  const course: { at: number; what: string }[] = [];
  const write = (what: string) => course.push({ at: performance.now(), what });
  let says = '';
  new MutationObserver(() => {
    const readout = document.getElementById('readout');
    const { state, note } = readout?.dataset ?? {};
    const now = `${state} ${note} ${readout?.querySelector('.message')?.textContent}`;
    if (now !== says) write(now);
    says = now;
  }).observe(document, { subtree: true, childList: true, attributes: true });
  const play = (note: number) => {
    write(`strike ${note}`);
    const { context, air } = open();
    const own = sounds.get(note) ?? [];
    const count = struck.get(note) ?? 0;
    struck.set(note, count + 1);
    const buffer = own[Math.min(count, own.length - 1)] ?? null;
    const source = new AudioBufferSourceNode(context, { buffer });
    source.connect(air);
    source.start();
  };
  const round = () => document.querySelector<HTMLElement>('.round')?.dataset;
  /** Seconds that the ear takes at most to settle a strike. */
  const measuring = 0.65;
  const progress = () => document.querySelector('.readout-progress')?.textContent;
  const isSettled = () => document.getElementById('readout')?.dataset['state'] === 'settled';
  window.struckPan = {
    course,
    load(strikes, rate) {
      const { context } = open();
      for (const { note } of strikes) {
        sounds.set(note, []);
        struck.delete(note);
      }
      for (const { note, samples } of strikes) {
        const bytes = Uint8Array.from(atob(samples), (letter) => letter.charCodeAt(0));
        const numbers = new Int16Array(bytes.buffer);
        const buffer = context.createBuffer(1, numbers.length, rate);
        buffer.getChannelData(0).set(Float32Array.from(numbers, (value) => value / 32_768));
        sounds.get(note)?.push(buffer);
      }
    },
    async follow(gap, until) {
      for (;;) {
        const data = round();
        if (!data || data['next'] === '' || Number(data['done']) >= until) return;
        const next = data['next'];
        const counted = progress();
        play(Number(next));
        const end = performance.now() + 1000 * gap;
        await pause(Math.min(gap, measuring));
        // A note that has settled is followed by another one, once it is kept.
        const goesOn = () => round()?.['next'] !== next || (progress() !== counted && !isSettled());
        while (performance.now() < end && !goesOn()) await pause(0.02);
      }
    },
    async strike(notes, gap) {
      for (const note of notes) {
        play(note);
        await pause(gap);
      }
    },
  };
}

/** Gives the player in the page a pan: one strike of every note. */
export async function takePan(page: Page, pan: PracticePan, loudness = 0.6): Promise<void> {
  await takeStrikes(
    page,
    notesOf(pan.layout).map((note) => ({ note, sound: pan.strike(note, loudness, struckRate) })),
  );
}

export interface StrikeSound {
  readonly note: number;
  readonly sound: Float32Array<ArrayBuffer>;
}

/** Gives the player these strikes, several of a note in the order in which they are played. */
export async function takeStrikes(page: Page, sounds: readonly StrikeSound[]): Promise<void> {
  const strikes = sounds.map(({ note, sound }) => {
    const numbers = Int16Array.from(sound, (value) => Math.round(32_767 * value));
    return { note, samples: Buffer.from(numbers.buffer).toString('base64') };
  });
  await page.evaluate(({ strikes, rate }) => window.struckPan.load(strikes, rate), {
    strikes,
    rate: struckRate,
  });
}
