// The blows on the bench: heard, logged, simulated, or taken back.
import {
  type BenchCourse,
  blowHeard,
  blowsLogged,
  isAwaiting,
  isOpened,
  newestStep,
  noBlows,
  setToLog,
} from '../../domain/bench/bench-course';
import type { Clock } from '../../domain/ports/phone-ports';
import type { LoggedBlows } from '../../domain/records/rack-records';
import type { SettingsModel } from '../settings/settings-model';
import type { BenchKeeper } from './bench-keeper';
import type { BenchReadout } from './bench-readout';
import { courseOf, type OpenBench } from './open-bench';

export interface BlowsOnBench {
  /** A knock was heard that is a blow. */
  hear(): void;
  /** Logs where blows fell, of the set that `setToLog` names, and remembers it for the next time. */
  log(logged: LoggedBlows): void;
  /** Blows that nobody heard, because they were simulated. */
  hammered(count: number, logged: LoggedBlows): void;
  /** What was heard last were no blows. */
  takeBack(): void;
}

export interface BenchBlowsParts {
  /** The open bench, or null. */
  readonly open: () => OpenBench | null;
  readonly show: (bench: OpenBench) => void;
  /** Keeps what was read so far. */
  readonly keepNewest: () => void;
  readonly readout: Pick<BenchReadout, 'show' | 'beginAnew'>;
  readonly keeper: Pick<BenchKeeper, 'takeBack'>;
  readonly settings: Pick<SettingsModel, 'bench' | 'set'>;
  readonly clock: Clock;
}

export function createBenchBlows({
  open,
  show,
  keepNewest,
  readout,
  keeper,
  settings,
  clock,
}: BenchBlowsParts): BlowsOnBench {
  /** Blows fell: what was read before them is kept, and the next strike begins a reading. */
  const blow = (change: (course: BenchCourse) => BenchCourse): void => {
    keepNewest();
    const bench = open();
    if (!bench) return;
    const course = change(bench.course);
    show({ ...bench, course });
    if (isAwaiting(course)) readout.beginAnew();
  };

  return {
    hear() {
      const { repeatsBlows, lastBlows } = settings.bench.value;
      const at = clock.now();
      blow((course) => {
        const begins = !isAwaiting(course);
        const after = blowHeard(course, at);
        return begins && repeatsBlows && lastBlows ? blowsLogged(after, at, lastBlows) : after;
      });
    },
    log(logged) {
      const bench = open();
      if (!bench || !isOpened(bench.course)) return;
      if (setToLog(bench.course) === 'unheard')
        blow((now) => blowsLogged(now, clock.now(), logged));
      else {
        const course = blowsLogged(bench.course, clock.now(), logged);
        show({ ...bench, course });
        if (newestStep(course).reading?.settled && !bench.check) keepNewest();
      }
      settings.set({ lastBlows: logged });
    },
    hammered(count, logged) {
      const at = clock.now();
      blow((course) => blowsLogged(blowHeard(course, at, count), at, logged));
    },
    takeBack() {
      const bench = open();
      if (!bench) return;
      const { kept } = newestStep(bench.course);
      const now = { ...bench, course: noBlows(bench.course) };
      if (now.course === bench.course) return;
      show(now);
      readout.show(courseOf(now));
      if (kept.blows !== null) keeper.takeBack(now, kept.blows);
    },
  };
}
