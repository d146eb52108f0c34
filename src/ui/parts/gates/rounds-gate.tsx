// Shows what follows from some rounds of a pan once their readings are read, and says why it cannot.
import type { ComponentChildren } from 'preact';
import { useEffect } from 'preact/hooks';
import { type RoundStart, roundOf } from '../../../domain/records/rack-records';
import type { RoundResult } from '../../../domain/rounds/round-result';
import type { OpenPan } from '../../../state/pan/pan-model';
import type { ResultsModel, RoundsRead } from '../../../state/pan/results-model';
import { ViewGate } from './view-gate';

export function RoundsGate({
  results,
  pan,
  rounds,
  children,
}: {
  readonly results: ResultsModel;
  readonly pan: OpenPan;
  readonly rounds: readonly RoundStart[];
  readonly children: (read: RoundsRead) => ComponentChildren;
}) {
  const read = (): void => {
    void results.read(pan.records, rounds);
  };
  useEffect(read, [results, pan.records, rounds.map(({ id }) => id).join()]);
  const view = results.view.value;
  // Another screen may have read others, or some of them only.
  const areThese =
    view.kind !== 'open' || rounds.every((start) => view.readings.has(roundOf(start)));
  return (
    <ViewGate view={areThese ? view : { kind: 'loading' }} onRetry={read}>
      {children}
    </ViewGate>
  );
}

/** Of a round that there may not be. */
export const resultIn = ({ results }: RoundsRead, start: RoundStart | null): RoundResult | null =>
  (start && results.get(roundOf(start))) ?? null;
