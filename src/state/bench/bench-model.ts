// The bench: strikes on one note, the blows between them, and what the blows did to the note and to others.
import { computed, effect, type ReadonlySignal, signal, untracked } from '@preact/signals';
import type { AdviceRules, SuggestedBlows } from '../../domain/advice/advice';
import { courseAfter, isOpened, readingMade } from '../../domain/bench/bench-course';
import type { NoteCheck } from '../../domain/bench/checks-after';
import type { Heard } from '../../domain/measurement/strike';
import type { Adviser } from '../../domain/ports/adviser';
import type { PanStore } from '../../domain/ports/pan-store';
import { knownNotes } from '../../domain/reading/known-notes';
import type { MarkKind } from '../../domain/records/rack-records';
import type { MidiNote } from '../../domain/tuning/units';
import { createLatest } from '../asking/latest';
import type { OpenView } from '../asking/open-view';
import type { ListenModel } from '../listening/listen-model';
import type { ReadoutPhase } from '../listening/readout-phase';
import type { SettingsModel } from '../settings/settings-model';
import { broughtUpToDate, isSameSubject, unkeptBench } from './begin-bench';
import { type BenchAdvice, followAdvice } from './bench-advice';
import { type BlowsOnBench, createBenchBlows } from './bench-blows';
import { createBenchHearing } from './bench-hearing';
import { type BenchInside, createBenchInside } from './bench-inside';
import { type BenchKeeper, type BenchKeeperPorts, createBenchKeeper } from './bench-keeper';
import { type BenchMove, moveAhead, nextCheck } from './bench-moves';
import { createBenchReadout } from './bench-readout';
import { followSuggested } from './bench-suggested';
import { type MainAction, mainAction } from './main-action';
import {
  type BenchSubject,
  checksOf,
  courseOf,
  noteHeard,
  type OpenBench,
  withCourse,
  withMark,
} from './open-bench';
import { type BenchStore, readBench } from './read-bench';

export interface BenchPorts extends BenchKeeperPorts {
  readonly adviser: Adviser;
  readonly store: BenchStore & Pick<PanStore, 'keep'>;
  readonly listen: ListenModel;
  readonly settings: Pick<SettingsModel, 'judging' | 'keepsSound' | 'bench' | 'set'>;
}

/** Missing: there is no such pan on this phone, or no such note on it. */
export type BenchView = OpenView<{ readonly bench: OpenBench }>;

export interface BenchModel
  extends Pick<BenchKeeper, 'saving' | 'retry'>,
    Pick<BlowsOnBench, 'log' | 'hammered'>,
    Pick<BenchInside, 'newest' | 'lookInside' | 'isLookedInto'> {
  readonly view: ReadonlySignal<BenchView>;
  /** What the readout shows. */
  readonly phase: ReadonlySignal<ReadoutPhase>;
  /** Strikes are listened for. */
  readonly isHearing: ReadonlySignal<boolean>;
  /** It began to listen by itself, because the microphone was on a moment ago, and has heard nothing since. */
  readonly cameOn: ReadonlySignal<boolean>;
  /** What to do about the note, also while blows fall; null for those who have not confirmed, and without a pan. */
  readonly advice: ReadonlySignal<BenchAdvice | null>;
  /** What was suggested for the set of blows that would be logged now, or null. */
  readonly suggested: ReadonlySignal<SuggestedBlows | null>;
  /** What comes next. */
  readonly main: ReadonlySignal<MainAction>;
  /** Where `next` would lead. */
  readonly ahead: ReadonlySignal<BenchMove>;
  /** The notes that the work may have moved. */
  readonly checks: ReadonlySignal<readonly NoteCheck[]>;
  /** Shows a note, as it is where it is shown already; it hears by itself where the microphone was on a moment ago. */
  open(subject: BenchSubject): Promise<void>;
  /** Opens the microphone, or the simulated pan. Call inside a tap. */
  listen(): Promise<void>;
  /** What was heard last were no blows. */
  noBlows(): void;
  /** Marks the note; `none` takes the mark back. */
  mark(mark: MarkKind): void;
  /** Keeps the reading as it is, settled or not. */
  keep(): void;
  /** Keeps, and moves on: to a note that must be checked, or to the next one of the work plan. */
  next(): BenchMove;
  /** Measures another note again, or goes back to the note of the bench. */
  check(note: MidiNote | null): void;
  /** Keeps, and turns the microphone off; what is shown stays. */
  stop(): void;
  /** The same, because the screen is left: the next one may turn it on again. */
  leave(): void;
}

export function createBenchModel(ports: BenchPorts): BenchModel {
  const { store, listen, settings, clock } = ports;
  const keeper = createBenchKeeper(ports);
  const readout = createBenchReadout();
  const view = signal<BenchView>({ kind: 'loading' });
  const open = computed(() => (view.value.kind === 'open' ? view.value.bench : null));
  const checks = computed(() => (open.value ? checksOf(open.value) : []));
  const rules = (): AdviceRules | null => {
    const { isTrained, suggestsBlows, professional } = settings.bench.value;
    if (!isTrained || !suggestsBlows) return null;
    return { limits: settings.judging.value.limits, professional };
  };
  const { adviser } = ports;
  const advice = followAdvice({ bench: () => open.value, rules, now: clock.now, adviser });
  const ahead = computed((): BenchMove => {
    return open.value ? moveAhead(open.value, settings.bench.value.work) : { kind: 'done' };
  });
  const latest = createLatest();

  const show = (bench: OpenBench): void => {
    view.value = { kind: 'open', bench };
  };

  /** Keeps the newest step of what is being measured as it is now. */
  const keepNewest = (): void => {
    const kept = open.value && keeper.keepNewest(open.value);
    if (!kept) return;
    show(kept);
    listen.knowNow(knownNotes(kept.around.readings));
  };

  const blows = createBenchBlows({
    open: () => open.value,
    show,
    keepNewest,
    readout,
    keeper,
    settings,
    clock,
  });

  const hear = (heard: Heard): void => {
    const bench = open.value;
    if (!bench || (heard.kind === 'strike' && heard.note !== noteHeard(bench))) return;
    const reading = readout.hear(heard);
    if (heard.kind === 'knock') {
      if (readout.phase.value.kind === 'listening') readout.show(courseOf(bench));
      if (!bench.check && isOpened(bench.course)) blows.hear();
    }
    if (!reading) return;
    const now = withCourse(bench, readingMade(courseOf(bench), reading));
    show(now);
    if (!reading.settled) return;
    keepNewest();
    if (bench.check) checkNote(nextCheck(open.value ?? now));
  };
  const hearing = createBenchHearing(listen, hear, clock);
  const inside = createBenchInside(listen, open, hearing.isOurs);
  const isPractising = () => hearing.isOurs.value && open.value?.subject.kind === 'practice';
  const isHearing = computed(() => hearing.isListening.value || isPractising());
  const phase = computed<ReadoutPhase>(() => {
    const shown = readout.phase.value;
    return shown.kind === 'listening' && !isHearing.value ? { kind: 'idle' } : shown;
  });
  // A call, a locked screen, a lost microphone: nothing of what was heard is lost with it.
  effect(() => {
    if (listen.microphone.value.kind === 'listening') return;
    untracked(() => hearing.isOurs.value && keepNewest());
  });

  const checkNote = (note: MidiNote | null): void => {
    keepNewest();
    const bench = open.value;
    if (!bench) return;
    const check = note === null || note === bench.course.note ? null : courseAfter(note, []);
    const now = { ...bench, check };
    show(now);
    readout.show(courseOf(now));
    if (hearing.isOurs.value) listen.expect(noteHeard(now));
  };

  const main = computed((): MainAction => {
    if (!open.value) return { kind: 'listen' };
    const isAdviceDue = !advice.value && rules() !== null && open.value.around.layout !== null;
    return mainAction(open.value, {
      isHearing: isHearing.value,
      advice: advice.value,
      isAdviceDue,
      ahead: ahead.value,
    });
  });

  return {
    view,
    phase,
    isHearing,
    cameOn: hearing.cameOn,
    checks,
    ahead,
    advice,
    suggested: followSuggested(open, advice),
    ...inside,
    main,
    saving: keeper.saving,
    retry: keeper.retry,
    async open(subject) {
      const before = open.value;
      const shown = before && isSameSubject(before.subject, subject) ? before : null;
      const isLatest = latest.begin();
      keepNewest();
      inside.comeBack();
      // Back from inside a strike it listens already.
      const isOn = shown !== null && hearing.isOurs.value;
      if (!isOn) hearing.letGo();
      if (subject.kind !== 'pan') {
        if (!shown) show(unkeptBench(subject, settings.judging.value, before));
      } else {
        if (!shown) view.value = { kind: 'loading' };
        const read = await readBench(store, subject, settings.judging.value, clock.now());
        if (!isLatest()) return;
        if (read === 'missing') view.value = { kind: 'missing' };
        else if (typeof read === 'string') view.value = { kind: 'trouble', trouble: read };
        else show(shown ? broughtUpToDate(open.value ?? shown, read) : read);
      }
      if (!open.value) return;
      readout.show(courseOf(open.value));
      if (!isOn) await hearing.goOn(open.value);
    },
    async listen() {
      if (!open.value) return;
      readout.show(courseOf(open.value));
      await hearing.begin(open.value);
    },
    log: blows.log,
    hammered: blows.hammered,
    noBlows: blows.takeBack,
    mark(mark) {
      if (!open.value) return;
      show(withMark(open.value, mark));
      keeper.mark(open.value, mark);
    },
    keep: keepNewest,
    next() {
      keepNewest();
      const move = ahead.value;
      checkNote(move.kind === 'check' ? move.note : null);
      return move;
    },
    check: checkNote,
    stop() {
      keepNewest();
      hearing.stop();
    },
    leave() {
      // A note that is still being read from the rack must not turn the microphone on any more.
      latest.drop();
      keepNewest();
      hearing.letGo();
      void listen.stop();
    },
  };
}
