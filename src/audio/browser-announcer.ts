// The phone's own voice, and two beeps. A voice that needs the network is never used.
import type { Announcer } from '../domain/ports/sound-ports';
import { playShortTone } from './short-tone';

/**
 * Above all notes and octaves of a pan (G6 and its octave: 3,136 Hz), so that no ear takes it for one (chosen, no
 * source, as is the next).
 */
const nextNoteBeep = { hz: 3600, level: 0.25, seconds: 0.07 };
const beepApart = 0.13;
/**
 * A voice that has not ended after this time, ms, is given up: some phones never report the end (chosen, no source).
 */
const longestSpeech = 6000;

export class BrowserAnnouncer implements Announcer {
  #context: AudioContext | null = null;

  hasVoice(): boolean {
    return localVoice() !== null;
  }

  say(text: string): Promise<void> {
    const voice = localVoice();
    if (!voice) return Promise.resolve();
    return new Promise((over) => {
      const speech = new SpeechSynthesisUtterance(text);
      speech.voice = voice;
      speech.lang = voice.lang;
      const patience = window.setTimeout(over, longestSpeech);
      const end = (): void => {
        window.clearTimeout(patience);
        over();
      };
      speech.onend = end;
      speech.onerror = end;
      speechSynthesis.cancel();
      speechSynthesis.speak(speech);
    });
  }

  async beep(): Promise<void> {
    try {
      this.#context ??= new AudioContext();
      const context = this.#context;
      await context.resume();
      const now = context.currentTime;
      await Promise.all(
        [0, beepApart].map((delay) => playShortTone(context, now + delay, nextNoteBeep)),
      );
    } catch {
      // No sound on this phone: the screen says it all. The next beep tries again.
      this.#context = null;
    }
  }

  hush(): void {
    if ('speechSynthesis' in window) speechSynthesis.cancel();
  }
}

function localVoice(): SpeechSynthesisVoice | null {
  if (!('speechSynthesis' in window)) return null;
  const own = speechSynthesis.getVoices().filter((voice) => voice.localService);
  return own.find(({ lang }) => lang.toLowerCase().startsWith('en')) ?? null;
}
