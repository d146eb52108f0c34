// Keeps what the bench makes. A bench without a pan of the rack writes nothing; one of a simulated pan learns all the same.

import { newestStep, stepKept } from '../../domain/bench/bench-course';
import { type MarkKind, panId, type RecordId } from '../../domain/records/rack-records';
import { type HeadPorts, newHead } from '../keeping/new-head';
import { createRecordKeeper, type KeepingStore, type RecordKeeper } from '../keeping/record-keeper';
import { type SoundKeeping, withSound } from '../keeping/with-sound';
import type { ListenModel } from '../listening/listen-model';
import { recordsOfNewest, type StepRecords } from './bench-records';
import { courseOf, type OpenBench, withCourse } from './open-bench';

export interface BenchKeeperPorts extends HeadPorts, SoundKeeping {
  readonly store: KeepingStore;
  readonly listen: Pick<ListenModel, 'soundOf' | 'taking'>;
  readonly appVersion: string;
}

export interface BenchKeeper extends Pick<RecordKeeper, 'saving' | 'retry'> {
  /** Keeps the newest step of what is being measured: the bench with it, or null where there is nothing new to keep. */
  keepNewest(bench: OpenBench): OpenBench | null;
  /** What was heard were no blows: their record is taken back. */
  takeBack(bench: OpenBench, target: RecordId): void;
  mark(bench: OpenBench, mark: MarkKind): void;
}

/** A simulated pan needs a name for the records that it makes; they never leave the model. */
const practice = panId('practice');

export function createBenchKeeper(ports: BenchKeeperPorts): BenchKeeper {
  const { store, listen } = ports;
  const keeper = createRecordKeeper(store);

  const write = async ({ reading, blows, erasures }: StepRecords, bench: OpenBench) => {
    const rest = [...listed(blows), ...erasures];
    if (!reading) return keeper.keep(rest);
    const newest = newestStep(courseOf(bench)).reading?.heard.at(-1);
    const { record, attachments } = await withSound(reading, newest, ports);
    return keeper.keep([record, ...rest], attachments);
  };

  return {
    saving: keeper.saving,
    retry: keeper.retry,
    keepNewest(bench) {
      const { subject, around } = bench;
      if (subject.kind === 'bare') return null;
      const course = courseOf(bench);
      const pan = subject.kind === 'pan' ? subject.pan : practice;
      const made = recordsOfNewest(course, {
        newHead: () => newHead(pan, ports),
        taking: { ...listen.taking.value, appVersion: ports.appVersion },
      });
      if (!made) return null;
      if (subject.kind === 'pan') void write(made, bench);
      const gone = new Set(made.erasures.map(({ target }) => target));
      const readings = around.readings.filter(({ id }) => !gone.has(id));
      const blows = around.blows.filter(({ id }) => !gone.has(id));
      return {
        ...withCourse(bench, stepKept(course, made.kept)),
        around: {
          ...around,
          readings: [...readings, ...listed(made.reading)],
          blows: [...blows, ...listed(made.blows)],
        },
      };
    },
    takeBack({ subject }, target) {
      if (subject.kind !== 'pan') return;
      void keeper.keep([{ ...newHead(subject.pan, ports), kind: 'erasure', target }]);
    },
    mark({ subject, course: { note } }, mark) {
      if (subject.kind !== 'pan') return;
      const head = newHead(subject.pan, ports);
      void keeper.keep([{ ...head, kind: 'mark', round: null, note, mark }]);
    },
  };
}

const listed = <T>(value: T | null): readonly T[] => (value === null ? [] : [value]);
