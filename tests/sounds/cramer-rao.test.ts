import { describe, expect, it } from 'vitest';
import { boundCents } from './cramer-rao';

/** Noise of variance ½·10^(−SNR/10) under an amplitude of 1. */
const noiseAt = (snrDb: number): number => 0.5 * 10 ** (-snrDb / 10);

// From the definition: inverse Fisher information of (frequency, damping, amplitude, phase) at 48 kHz,
// 20 dB, worked out apart from this code; closed forms in Yao & Pandit, IEEE Trans. Signal Process. 43(4),
// 878, 1995. Standard deviation in cents, given to four decimals.
const published = [
  { hz: 440, decaySeconds: 0.45, seconds: 0.3, cents: 0.0085 },
  { hz: 440, decaySeconds: 0.45, seconds: 0.6, cents: 0.0042 },
  { hz: 440, decaySeconds: 0.45, seconds: 1, cents: 0.0031 },
  { hz: 261.6, decaySeconds: 0.5, seconds: 0.3, cents: 0.0138 },
  { hz: 261.6, decaySeconds: 0.5, seconds: 0.6, cents: 0.0066 },
  { hz: 261.6, decaySeconds: 0.5, seconds: 1, cents: 0.0047 },
  { hz: 880, decaySeconds: 0.35, seconds: 0.3, cents: 0.0047 },
  { hz: 880, decaySeconds: 0.35, seconds: 0.6, cents: 0.0026 },
  { hz: 880, decaySeconds: 0.35, seconds: 1, cents: 0.0021 },
] as const;

const bound = (line: Omit<(typeof published)[number], 'cents'>, snrDb: number, amplitude = 1) =>
  boundCents({ ...line, amplitude, noiseVariance: noiseAt(snrDb), sampleRate: 48000 });

describe('the Cramér–Rao bound', () => {
  it.each(published)('is $cents cents for $hz Hz in a window of $seconds s', (line) => {
    expect(Math.abs(bound(line, 20) - line.cents)).toBeLessThan(0.00006);
  });

  it.each(published)('is a tenth of it at 40 dB ($hz Hz, $seconds s)', (line) => {
    expect(bound(line, 40) / bound(line, 20)).toBeCloseTo(0.1, 6);
  });

  it('halves when the amplitude doubles', () => {
    const [line] = published;
    expect(bound(line, 20, 2) / bound(line, 20)).toBeCloseTo(0.5, 6);
  });

  it('falls with the root of the sample rate at the same noise per sample', () => {
    const line = { ...published[0], amplitude: 1, noiseVariance: noiseAt(20) };
    const ratio =
      boundCents({ ...line, sampleRate: 96000 }) / boundCents({ ...line, sampleRate: 48000 });
    expect(ratio).toBeCloseTo(Math.SQRT1_2, 6);
  });

  it('only grows when the phase may also glide, and less so in a window long after the glide', () => {
    const { hz, decaySeconds } = published[0];
    const line = { hz, decaySeconds, amplitude: 1, noiseVariance: noiseAt(20), sampleRate: 48000 };
    const costIn = (seconds: number): number =>
      boundCents({ ...line, seconds }, 0.04) / boundCents({ ...line, seconds });
    expect(costIn(0.3)).toBeGreaterThan(1.2);
    expect(costIn(1)).toBeGreaterThan(1);
    expect(costIn(1)).toBeLessThan(costIn(0.3));
  });
});
