// Seeded voices that begin like a strike: shouts and counting-in, with plosives and steady or falling pitch.
import { between, gaussianFrom } from '../../src/practice-pan/seeded-random';
import { scaledToPeak } from './noise';

/** "One, two, ta, hey": words of one syllable with a burst before a vowel that starts hard and fades; peak 1. */
export function countingVoice(
  random: () => number,
  sampleRate: number,
  seconds: number,
): Float32Array<ArrayBuffer> {
  const sound = new Float32Array(Math.round(seconds * sampleRate));
  const speaker = between(random, 90, 320);
  let start = between(random, 0.02, 0.2);
  while (start < seconds - 0.2) {
    const length = between(random, 0.12, 0.6);
    addWord(sound, sampleRate, start, length, speaker * between(random, 0.85, 1.2), random);
    start += length + between(random, 0.1, 0.5);
  }
  return scaledToPeak(sound);
}

function addWord(
  sound: Float32Array,
  sampleRate: number,
  start: number,
  length: number,
  pitch: number,
  random: () => number,
): void {
  const gaussian = gaussianFrom(random);
  const first = Math.round(start * sampleRate);
  const count = Math.round(length * sampleRate);
  const burst = between(random, 0, 0.4);
  const voiceOnset = between(random, 0.002, 0.03);
  const attack = between(random, 0.003, 0.03);
  const fade = between(random, 0.08, 0.5);
  // A sung or called word holds its pitch, a spoken one lets it fall.
  const fall = random() < 0.3 ? 0 : between(random, -0.25, 0.1);
  const formants = [
    between(random, 280, 850),
    between(random, 850, 2300),
    between(random, 2300, 3300),
  ];
  const tilt = between(random, 0.4, 1);
  let phase = random();
  let drift = 0;
  for (let n = 0; n < count && first + n < sound.length; n++) {
    const time = n / sampleRate;
    drift = 0.9995 * drift + 0.00003 * gaussian();
    const hz = pitch * (1 + fall * (time / length) + drift);
    phase += hz / sampleRate;
    const voiced = time - voiceOnset;
    let value = burst * gaussian() * Math.exp(-time / 0.006);
    if (voiced > 0) {
      let vowel = 0;
      for (let order = 1; order * hz < 4000; order++) {
        const line = order * hz;
        const gain = formants.reduce((sum, formant, k) => {
          const width = 60 + 0.05 * formant;
          return sum + 0.6 ** k / (1 + ((line - formant) / width) ** 2) ** 0.5;
        }, 0);
        vowel += (gain / order ** tilt) * Math.sin(2 * Math.PI * order * phase);
      }
      const end = Math.min(1, (length - time) / 0.03);
      value += vowel * (1 - Math.exp(-voiced / attack)) * Math.exp(-voiced / fade) * end;
      value += 0.02 * gaussian();
    }
    const at = first + n;
    sound[at] = (sound[at] ?? 0) + value;
  }
}
