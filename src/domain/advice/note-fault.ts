// Which fault of the trade a note has, and in which steps it is mended.

import { mapThree, partialIndices, type ThreePartials } from '../numbers/three-partials';
import { isJudged, type NoteErrors, partialsOff } from './note-errors';
import { type Must, type TradeCase, tradeCases } from './trade-cases';

/** `free`: in tune with the fundamental as it is and as it will be, so it may move along or stay. */
export type Need = Must | 'free' | 'unjudged';
export type NoteNeeds = ThreePartials<Need>;

/**
 * What each partial needs against its fixed target, so that it ends in tune with the fundamental. A fundamental
 * within its limit stays where it is; one outside goes to its target, and octave and third must follow it there unless
 * they are there already.
 */
export const needsOf = (errors: NoteErrors): NoteNeeds =>
  needsWith(errors, partialsOff(errors).includes(0));

/**
 * The same where a fundamental within its limit is nevertheless what puts another partial out that stands where it
 * should: a little of the fundamental's own way is left. Null if it is not so.
 */
export const needsOfTheRest = (errors: NoteErrors): NoteNeeds | null => {
  const { values, limits } = errors;
  const off = partialsOff(errors);
  const isCause = !off.includes(0) && off.some((k) => Math.abs(values[0] + values[k]) <= limits[k]);
  return isCause ? needsWith(errors, true) : null;
};

function needsWith(errors: NoteErrors, isOff: boolean): NoteNeeds {
  const { values, limits } = errors;
  const way = isOff ? -values[0] : 0;
  return mapThree(partialIndices, (k): Need => {
    if (!isJudged(errors, k)) return 'unjudged';
    if (k === 0) return isOff ? wayOf(way) : 'stay';
    const left = way - values[k];
    if (!isOff) return Math.abs(left) > limits[k] ? wayOf(left) : 'stay';
    const [isTrueNow, isThere] = [values[k], left].map((each) => Math.abs(each) <= limits[k]);
    if (isTrueNow && isThere) return 'free';
    // It moves along with the fundamental if it fits that better than its own target.
    const staysBehind = isThere && Math.abs(left) <= Math.abs(values[k]);
    return staysBehind ? 'stay' : wayOf(left);
  });
}

const wayOf = (cents: number): Must => (cents > 0 ? 'up' : 'down');

/** Whether the blows of this case move nothing on purpose that must stay, and something that must move. */
function fits({ must }: TradeCase, needs: NoteNeeds, unjudged: 'moves' | 'stays'): boolean {
  const isAllowed = must.every((each, k) => {
    const need = needs[k];
    if (each === 'stay' || need === each || need === 'free') return true;
    return need === 'unjudged' && unjudged === 'moves';
  });
  return isAllowed && covered(must, needs) > 0;
}

/** How many of the partials that must move are moved. */
const covered = (must: TradeCase['must'], needs: NoteNeeds): number =>
  must.filter((each, k) => each !== 'stay' && each === needs[k]).length;

/** The needs that are left when a case has been worked. */
export const needsAfter = (needs: NoteNeeds, { must }: TradeCase): NoteNeeds =>
  mapThree(needs, (need, k): Need => (need === must[k] ? 'stay' : need));

/**
 * The steps that mend all that must move: the fundamental first, with all that goes along with it, then what is left,
 * each on its own axis. Where the trade has two ways for a step, both are in it.
 */
export function stepsFor(needs: NoteNeeds): readonly (readonly TradeCase[])[] {
  const withFundamental = needs[0] === 'up' || needs[0] === 'down';
  const fitting = tradeCases.filter(
    (each) => fits(each, needs, 'stays') && (each.must[0] !== 'stay' || !withFundamental),
  );
  const most = Math.max(0, ...fitting.map(({ must }) => covered(must, needs)));
  const step = fitting.filter(({ must }) => covered(must, needs) === most);
  const [first] = step;
  if (!first) return [];
  // An octave and a third that are off by themselves are two steps, not two ways for one.
  const ways = withFundamental ? step : [first];
  return [ways, ...stepsFor(needsAfter(needs, first))];
}

export interface OpenCase {
  readonly trade: TradeCase;
  readonly needs: NoteNeeds;
}

/**
 * The cases that may be worked now, in the order in which the trade would try them: the steps, then whatever else
 * moves only what must move.
 */
export function casesInOrder(errors: NoteErrors): readonly (readonly OpenCase[])[] {
  const needs = needsOf(errors);
  const steps = stepsFor(needs);
  const known = new Set(steps.flat());
  const others = tradeCases.filter((each) => !known.has(each) && fits(each, needs, 'moves'));
  const [first = [], ...later] = [...steps, others].map((cases) =>
    cases.map((trade): OpenCase => ({ trade, needs })),
  );
  const rest = needsOfTheRest(errors);
  const ofTheRest = rest ? (stepsFor(rest)[0] ?? []) : [];
  return [
    [...first, ...ofTheRest.map((trade) => ({ trade, needs: rest ?? needs }))],
    ...later,
  ].filter((each) => each.length > 0);
}
