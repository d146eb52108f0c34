// What blows are expected to do on a pan that has shown nothing yet: directions from the trade, sizes guessed and wide.

import type { ThreePartials } from '../numbers/three-partials';
import type { BlowPlace, BlowSide, BlowWhere } from '../records/blow-places';

export interface BlowPrior {
  /** Expected change per set of `usualCount` light blows, cents, each partial against its fixed target. */
  readonly mean: ThreePartials;
  /** One standard deviation of each partial by itself, beside the strength that all share. */
  readonly own: ThreePartials;
  /** Where the direction comes from. No source gives a size: all sizes are our own guesses. */
  readonly source: 'Kronman 1992, ch. 24' | 'common practice, no source' | 'nothing known';
}

interface Guess {
  readonly mean: number;
  readonly own: number;
}

/** Our own guess: a set of a few light blows moves a note by a few cents. */
const up: Guess = { mean: 4, own: 1.2 };
const upMost: Guess = { mean: 6, own: 1.8 };
const down: Guess = { mean: -4, own: 1.2 };
const downNotAlways: Guess = { mean: -2, own: 3 };
const little: Guess = { mean: 0, own: 1.5 };
const eitherWay: Guess = { mean: 0, own: 5 };
const unknown: Guess = { mean: 0, own: 4 };

const prior = (
  [fundamental, octave, third]: ThreePartials<Guess>,
  source: BlowPrior['source'],
): BlowPrior => ({
  mean: [fundamental.mean, octave.mean, third.mean],
  own: [fundamental.own, octave.own, third.own],
  source,
});

const practice = (guesses: ThreePartials<Guess>): BlowPrior =>
  prior(guesses, 'common practice, no source');
const nothingKnown = prior([unknown, unknown, unknown], 'nothing known');

const priors: Readonly<Record<BlowPlace, Readonly<Record<BlowSide, BlowPrior>>>> = {
  // A smaller field sounds higher. U. Kronman, "Steel Pan Tuning", Musikmuseet, Stockholm, 1992, ch. 24.
  border: {
    above: prior([up, up, up], 'Kronman 1992, ch. 24'),
    below: practice([down, down, down]),
  },
  middle: {
    above: practice([downNotAlways, little, little]),
    below: practice([up, little, little]),
  },
  'long-ends': { above: practice([up, upMost, little]), below: nothingKnown },
  'short-ends': { above: practice([up, little, upMost]), below: nothingKnown },
  corners: { above: practice([up, little, little]), below: nothingKnown },
  'glancing-long': {
    above: practice([little, eitherWay, little]),
    below: practice([little, eitherWay, little]),
  },
  'glancing-short': {
    above: practice([little, little, eitherWay]),
    below: practice([little, little, eitherWay]),
  },
};

export const priorOf = ({ place, side }: BlowWhere): BlowPrior => priors[place][side];
