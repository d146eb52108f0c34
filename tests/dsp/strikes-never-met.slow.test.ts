// Real strikes, as they are and as short and as early as they can come. Those of ../shared/strikes are used where they
// are there (`npm run bench:strikes` takes all of them, and more); the bank's always.
import { describe, expect, it } from 'vitest';
import {
  hearSound,
  inSilence,
  type Outcome,
  type Sound,
  toldNote,
  toldNothing,
} from '../benchmarks/strikes/hear-take';
import { missingTakes, realTakes } from '../benchmarks/strikes/real-takes';
import { countsOf } from '../benchmarks/strikes/strike-table';
import { realNotes } from '../ear-scenes/which-note';
import { realStrikes } from '../synthetic-sounds/real-strike';

interface Struck extends Sound {
  readonly name: string;
  readonly note: number;
}

/** One of this many recordings of the folder: the whole test must take less than a minute. */
const oneOf = 3;

const bank: readonly Struck[] = (await realStrikes()).map((strike, n) => ({
  ...strike,
  note: realNotes[n] ?? 0,
}));
const takes = realTakes();
if (!takes) process.stdout.write(`${missingTakes()} Only the strikes of the bank are tested.\n`);
const struck: readonly Struck[] = [
  ...bank,
  ...(takes ?? [])
    .filter((_, n) => n % oneOf === 0)
    .map(({ file, midi, samples, sampleRate }) => ({
      name: file,
      note: midi,
      samples,
      sampleRate,
    })),
];

/** What became of all of them, with the names of those that were not named right. */
function outcomes(
  change: (strike: Struck) => Sound,
  isTold: boolean,
): { readonly all: readonly Outcome[]; readonly text: string } {
  const named = struck.map((strike) => ({
    strike,
    outcome: hearSound(change(strike), strike.note, isTold ? toldNote(strike.note) : toldNothing),
  }));
  const all = named.map(({ outcome }) => outcome);
  const others = named.filter(({ outcome }) => outcome !== 'right');
  const names = others.map(({ strike, outcome }) => `${strike.name} ${outcome}`).join(', ');
  return { all, text: `${countsOf(all)}: ${names}` };
}

const share = (all: readonly Outcome[], outcome: Outcome): number =>
  all.filter((each) => each === outcome).length / all.length;

describe('a real strike', () => {
  it('is named, told nothing', () => {
    const { all, text } = outcomes((strike) => inSilence(strike), false);
    expect(share(all, 'right'), text).toBeGreaterThanOrEqual(0.95);
    expect(share(all, 'knock'), text).toBe(0);
    expect(share(all, 'wrong'), text).toBeLessThanOrEqual(0.02);
  });

  it('is named where the note is expected', () => {
    const { all, text } = outcomes((strike) => inSilence(strike), true);
    expect(share(all, 'right'), text).toBeGreaterThanOrEqual(0.97);
    expect(share(all, 'knock'), text).toBe(0);
  });

  it('is heard a tenth of a second after listening began', () => {
    const { all, text } = outcomes((strike) => inSilence(strike, 0.1), true);
    expect(share(all, 'right'), text).toBeGreaterThanOrEqual(0.95);
  });

  it('is heard in a file that begins with it', () => {
    const { all, text } = outcomes((strike) => inSilence(strike, 0.003), true);
    expect(share(all, 'right'), text).toBeGreaterThanOrEqual(0.95);
  });

  it('is heard in a file that ends 0.4 s after it', () => {
    const { all, text } = outcomes(({ samples, sampleRate }) => {
      const whole = inSilence({ samples, sampleRate });
      return { samples: whole.samples.slice(0, Math.round(0.9 * sampleRate)), sampleRate };
    }, true);
    expect(share(all, 'right'), text).toBeGreaterThanOrEqual(0.95);
  });
});
