// The readout of the bench as it goes on: it knows whether the next strike begins a reading.
import { type ReadonlySignal, signal } from '@preact/signals';
import { type BenchCourse, newestReading, newestStep } from '../../domain/bench/bench-course';
import type { Heard } from '../../domain/measurement/strike';
import type { Reading } from '../../domain/reading/reading';
import type { ReadoutPhase } from '../listening/readout-phase';
import { benchPhaseAfter, phaseOf } from './bench-phase';

export interface BenchReadout {
  readonly phase: ReadonlySignal<ReadoutPhase>;
  /** The newest reading of the course, until the next strike. */
  show(course: BenchCourse): void;
  /** The reading that a strike has made; null for first looks and for all that makes none. */
  hear(heard: Heard): Reading | null;
  /** Blows have fallen: the next strike begins a reading. */
  beginAnew(): void;
}

export function createBenchReadout(): BenchReadout {
  const phase = signal<ReadoutPhase>({ kind: 'listening' });
  let isNew = true;
  return {
    phase,
    show(course) {
      phase.value = phaseOf(newestReading(course));
      isNew = newestStep(course).reading === null;
    },
    hear(heard) {
      const after = benchPhaseAfter(phase.value, heard, isNew);
      phase.value = after;
      if (heard.kind !== 'strike') return null;
      isNew = false;
      const isReading = after.kind === 'heard' || after.kind === 'settled';
      return isReading && !heard.provisional ? after.reading : null;
    },
    beginAnew() {
      isNew = true;
    },
  };
}
