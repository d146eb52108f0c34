// Shows what follows from some rounds of a pan once their readings are read, and says why it cannot.
import type { ComponentChildren } from 'preact';
import { useEffect } from 'preact/hooks';
import { type RoundStart, roundOf } from '../../../domain/records/rack-records';
import type { RoundResult } from '../../../domain/rounds/round-result';
import type { OpenPan } from '../../../state/pan/pan-model';
import type { ResultsView } from '../../../state/pan/results-model';
import type { PanScreenModels } from '../../frame/app-models';
import { rackWords } from '../../words/rack-words';
import { Instead, InTrouble } from './pan-gate';

export type ReadRounds = Extract<ResultsView, { readonly kind: 'ready' }>;

export function RoundsGate({
  models: { results },
  pan,
  rounds,
  children,
}: {
  readonly models: Pick<PanScreenModels, 'results'>;
  readonly pan: OpenPan;
  readonly rounds: readonly RoundStart[];
  readonly children: (read: ReadRounds) => ComponentChildren;
}) {
  const read = (): void => {
    void results.read(pan.records, rounds);
  };
  useEffect(read, [results, pan.records, rounds.map(({ id }) => id).join()]);
  const view = results.view.value;
  if (view.kind === 'trouble') return <InTrouble trouble={view.trouble} onRetry={read} />;
  // Another screen may have read others, or some of them only.
  if (view.kind === 'loading' || rounds.some((start) => !view.readings.has(roundOf(start)))) {
    return <Instead text={rackWords.reading} tone="hint" />;
  }
  return <>{children(view)}</>;
}

/** Of a round that there may not be. */
export const resultIn = ({ results }: ReadRounds, start: RoundStart | null): RoundResult | null =>
  (start && results.get(roundOf(start))) ?? null;
