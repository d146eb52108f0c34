// Blows and voices that are no notes, and how many of them the ear takes for a strike.
import { between, seededRandom } from '../../../src/practice-pan/seeded-random';
import { finallyHeard } from '../../dsp/listen-to';
import { clap, rimKnock, woodenKnock } from '../../sounds/knock';
import { speechLikeNoise } from '../../sounds/noise';
import { placed } from '../../synthetic-sounds/sounds';

export interface NonStrike {
  readonly name: string;
  readonly samples: Float32Array;
  readonly sampleRate: number;
}

const makers = [woodenKnock, clap, rimKnock, speechLikeNoise] as const;
const names = ['wooden knock', 'clap', 'rim knock', 'speech'] as const;

/** `count` seeded cases, the kinds in turn, in a faintly noisy room. */
export function seededNonStrikes(count: number): readonly NonStrike[] {
  const sampleRate = 48000;
  return Array.from({ length: count }, (_, n) => {
    const random = seededRandom(7000 + n);
    const kind = n % makers.length;
    const make = makers[kind] ?? woodenKnock;
    const gain = between(random, 0.05, 0.7);
    const sound = make(random, sampleRate, 1.2).map((value) => gain * value);
    const samples = placed([{ at: 0.3, samples: sound }], { sampleRate, seconds: 2 });
    return { name: names[kind] ?? '', samples, sampleRate };
  });
}

/** The names of the cases in which a strike was heard. */
export const takenAsStrikes = (cases: readonly NonStrike[]): readonly string[] =>
  cases
    .filter(({ samples, sampleRate }) =>
      finallyHeard(samples, sampleRate).some((heard) => heard.kind === 'strike'),
    )
    .map(({ name }) => name);
