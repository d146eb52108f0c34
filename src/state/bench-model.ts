// The bench: strikes on one note, the blows between them, and what the blows did to the note and to others.
import { computed, effect, type ReadonlySignal, signal, untracked } from '@preact/signals';
import type { Heard, Strike } from '../domain/measurement/strike';
import type { PanStore, StoreTrouble } from '../domain/ports/pan-store';
import type { Clock, Identities } from '../domain/ports/phone-ports';
import type { CardSettings } from '../domain/records/card-settings';
import {
  attachmentId,
  type LoggedBlows,
  type MarkKind,
  type PanId,
  panId,
  recordId,
} from '../domain/records/rack-records';
import { soundAttachment } from '../domain/records/sound-attachment';
import { cents, type MidiNote } from '../domain/tuning/units';
import {
  type BenchCourse,
  blowHeard,
  blowsLogged,
  courseAfter,
  isAwaiting,
  isOpened,
  newestReading,
  newestStep,
  noBlows,
  readingMade,
  setToLog,
  stepKept,
} from '../domain/work/bench-course';
import type { NoteCheck } from '../domain/work/checks-after';
import { knownNotes } from '../domain/work/known-notes';
import { adviceOn, type BenchAdvice } from './bench-advice';
import { benchPhaseAfter, phaseOf } from './bench-phase';
import { recordsOfNewest } from './bench-records';
import type { ListenModel } from './listen-model';
import { type BenchSubject, checksOf, noteHeard, type OpenBench } from './open-bench';
import { readBench } from './read-bench';
import type { ReadoutPhase } from './readout-phase';
import { createRecordKeeper, type RecordKeeper } from './record-keeper';
import type { SettingsModel } from './settings-model';

export interface BenchPorts {
  readonly store: PanStore;
  readonly listen: ListenModel;
  readonly settings: Pick<SettingsModel, 'judging' | 'keepsSound' | 'bench' | 'set'>;
  readonly clock: Clock;
  readonly identities: Identities;
  readonly appVersion: string;
}

export type BenchView =
  | { readonly kind: 'none' }
  | { readonly kind: 'loading' }
  /** There is no such pan on this phone, or no such note on it. */
  | { readonly kind: 'missing' }
  | { readonly kind: 'trouble'; readonly trouble: StoreTrouble }
  | { readonly kind: 'open'; readonly bench: OpenBench };

/** Where moving on leads. */
export type BenchMove =
  /** Another note is measured again, on this bench. */
  | { readonly kind: 'check'; readonly note: MidiNote }
  /** The next note of the work plan: its bench is to be opened. */
  | { readonly kind: 'note'; readonly pan: PanId; readonly note: MidiNote }
  | { readonly kind: 'done' };

export interface BenchModel extends Pick<RecordKeeper, 'saving' | 'retry'> {
  readonly view: ReadonlySignal<BenchView>;
  /** What the readout shows. */
  readonly phase: ReadonlySignal<ReadoutPhase>;
  /** Strikes are listened for. */
  readonly isHearing: ReadonlySignal<boolean>;
  /** What to do about the note; null for those who have not confirmed, while blows wait for a strike, and without a pan. */
  readonly advice: ReadonlySignal<BenchAdvice | null>;
  /** Where `next` would lead. */
  readonly ahead: ReadonlySignal<BenchMove>;
  /** The notes that the work may have moved. */
  readonly checks: ReadonlySignal<readonly NoteCheck[]>;
  /** Shows a note; `listen` begins to hear it. One that is shown already stays as it is. */
  open(subject: BenchSubject): Promise<void>;
  /** Opens the microphone, or the simulated pan. Call inside a tap. */
  listen(): Promise<void>;
  /** Logs where blows fell, of the set that `setToLog` names, and remembers it for the next time. */
  log(logged: LoggedBlows): void;
  /** Blows that nobody heard, because they were simulated. */
  hammered(count: number, logged: LoggedBlows): void;
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
  /** Keeps, and hears nothing more; what is shown stays. */
  leave(): void;
}

/** A simulated pan needs a name for the records that it makes; they never leave the model. */
const practice = panId('practice');

export function createBenchModel(ports: BenchPorts): BenchModel {
  const { store, listen, settings, clock, identities } = ports;
  const keeper = createRecordKeeper(store);
  const view = signal<BenchView>({ kind: 'none' });
  const phase = signal<ReadoutPhase>({ kind: 'listening' });
  /** What is heard is for this bench. */
  const isMine = signal(false);
  const open = computed(() => (view.value.kind === 'open' ? view.value.bench : null));
  const checks = computed(() => (open.value ? checksOf(open.value) : []));
  const advice = computed(() => {
    const { isTrained, suggestsBlows, professional } = settings.bench.value;
    if (!isTrained || !suggestsBlows || !open.value) return null;
    const rules = { limits: settings.judging.value.limits, professional };
    return adviceOn(open.value, rules, untracked(clock.now));
  });
  const isHearing = computed(() => {
    const isOpen = ['priming', 'listening'].includes(listen.microphone.value.kind);
    return isMine.value && (isOpen || open.value?.subject.kind === 'practice');
  });
  const shownPhase = computed<ReadoutPhase>(() =>
    phase.value.kind === 'listening' && !isHearing.value ? { kind: 'idle' } : phase.value,
  );
  /** A bench that was opened later makes an older answer of the store worthless. */
  let turn = 0;
  /** The next strike begins a reading. */
  let isNew = true;
  /** Numbers of events begin anew with each listening; those of a bench go on. */
  let eventsBefore = 0;
  let lastEvent = 0;

  const show = (bench: OpenBench): void => {
    view.value = { kind: 'open', bench };
  };
  const withCourse = (bench: OpenBench, course: BenchCourse): OpenBench =>
    bench.check ? { ...bench, check: course } : { ...bench, course };
  const courseOf = ({ check, course }: OpenBench): BenchCourse => check ?? course;

  /** Keeps the newest step of what is being measured as it is now. */
  const keepNewest = (): void => {
    const bench = open.value;
    if (!bench || bench.subject.kind === 'bare') return;
    const pan = bench.subject.kind === 'pan' ? bench.subject.pan : practice;
    const course = courseOf(bench);
    const made = recordsOfNewest(course, {
      pan,
      now: clock.now(),
      newId: () => recordId(identities.next()),
      taking: { ...listen.taking.value, appVersion: ports.appVersion },
    });
    if (!made) return;
    const { reading, blows, erasures } = made;
    const gone = new Set(erasures.map(({ target }) => target));
    const around = {
      ...bench.around,
      readings: [...bench.around.readings.filter(({ id }) => !gone.has(id)), ...listed(reading)],
      blows: [...bench.around.blows.filter(({ id }) => !gone.has(id)), ...listed(blows)],
    };
    show({ ...withCourse(bench, stepKept(course, made.kept)), around });
    listen.knowNow(knownNotes(around.readings));
    if (bench.subject.kind === 'pan') void keepAll(made, newestStep(course).reading?.heard.at(-1));
  };
  const keepAll = async (
    { reading, blows, erasures }: NonNullable<ReturnType<typeof recordsOfNewest>>,
    newest: Strike | undefined,
  ): Promise<void> => {
    const sound =
      reading && newest && settings.keepsSound.value ? await listen.soundOf(newest) : null;
    const rest = [...listed(blows), ...erasures];
    if (!reading || !sound) return keeper.keep([...listed(reading), ...rest]);
    const id = attachmentId(identities.next());
    const attachment = soundAttachment(sound, { id, pan: reading.pan, at: reading.at });
    return keeper.keep([{ ...reading, sound: id }, ...rest], [attachment]);
  };

  /** Blows fell: what was read before them is kept, and the next strike begins a reading. */
  const blow = (change: (course: BenchCourse) => BenchCourse): void => {
    keepNewest();
    const bench = open.value;
    if (!bench) return;
    show({ ...bench, course: change(bench.course) });
    isNew = isAwaiting(change(bench.course)) || isNew;
  };

  const hearStrike = (bench: OpenBench, strike: Strike): void => {
    phase.value = benchPhaseAfter(phase.value, strike, isNew);
    isNew = false;
    const { kind } = phase.value;
    if (strike.provisional || (kind !== 'heard' && kind !== 'settled')) return;
    const { reading } = phase.value;
    show(withCourse(bench, readingMade(courseOf(bench), reading)));
    if (!reading.settled) return;
    keepNewest();
    if (bench.check) checkNote(nextCheck());
  };

  const hear = (heard: Heard): void => {
    const bench = open.value;
    if (!bench) return;
    switch (heard.kind) {
      case 'strike':
        if (heard.note === noteHeard(bench)) hearStrike(bench, heard);
        return;
      case 'refused':
        phase.value = benchPhaseAfter(phase.value, heard, isNew);
        return;
      case 'knock': {
        phase.value = benchPhaseAfter(phase.value, heard, isNew);
        if (phase.value.kind === 'listening') showNewest(bench);
        if (bench.check || !isOpened(bench.course)) return;
        const { repeatsBlows, lastBlows } = settings.bench.value;
        const at = clock.now();
        blow((course) => {
          const begins = !isAwaiting(course);
          const after = blowHeard(course, at);
          return begins && repeatsBlows && lastBlows ? blowsLogged(after, at, lastBlows) : after;
        });
      }
    }
  };

  /** The newest reading stays on the readout until the next strike. */
  const showNewest = (bench: OpenBench): void => {
    phase.value = phaseOf(newestReading(courseOf(bench)));
    isNew = newestStep(courseOf(bench)).reading === null;
  };

  listen.onHeard((heard) => {
    if (!isMine.value) return;
    const event = heard.event + eventsBefore;
    lastEvent = Math.max(lastEvent, event);
    hear({ ...heard, event });
  });
  // A call, a locked screen, a lost microphone: nothing of what was heard is lost with it.
  effect(() => {
    if (listen.microphone.value.kind !== 'listening') untracked(() => isMine.value && keepNewest());
  });

  const checkNote = (note: MidiNote | null): void => {
    keepNewest();
    const bench = open.value;
    if (!bench) return;
    const check = note === null || note === bench.course.note ? null : courseAfter(note, []);
    const now = { ...bench, check };
    show(now);
    showNewest(now);
    if (isMine.value) listen.expect(noteHeard(now));
  };
  /** The next note to be measured again after the one that is, or null: none is left. */
  const nextCheck = (): MidiNote | null => {
    const at = checks.value.findIndex(
      ({ disturbed }) => disturbed.note === open.value?.check?.note,
    );
    const next = checks.value.slice(at + 1).find(({ now }) => now === null);
    return next?.disturbed.note ?? null;
  };
  const ahead = computed((): BenchMove => {
    const note = nextCheck();
    if (note !== null) return { kind: 'check', note };
    return nextOfPlan(open.value, settings.bench.value.work);
  });

  return {
    view,
    phase: shownPhase,
    isHearing,
    checks,
    ahead,
    advice,
    saving: keeper.saving,
    retry: keeper.retry,
    async open(subject) {
      const shown = open.value;
      const mine = ++turn;
      keepNewest();
      isMine.value = false;
      if (subject.kind !== 'pan') {
        if (!shown || !isSame(shown.subject, subject)) {
          show(unkeptBench(subject, settings.judging.value, shown));
        }
      } else {
        const isShown = shown !== null && isSame(shown.subject, subject);
        if (!isShown) view.value = { kind: 'loading' };
        const read = await readBench(store, subject, settings.judging.value, clock.now());
        if (mine !== turn) return;
        if (read === 'missing') view.value = { kind: 'missing' };
        else if (typeof read === 'string') view.value = { kind: 'trouble', trouble: read };
        else show(isShown && shown ? broughtUpToDate(open.value ?? shown, read) : read);
      }
      if (open.value) showNewest(open.value);
    },
    async listen() {
      const bench = open.value;
      if (!bench) return;
      eventsBefore = lastEvent;
      isMine.value = true;
      showNewest(bench);
      const note = noteHeard(bench);
      switch (bench.subject.kind) {
        case 'pan': {
          const { a4, readings, layout } = bench.around;
          const notes = layout?.drums.flatMap((drum) => drum.notes.map((each) => each.note)) ?? [];
          const known = knownNotes(readings);
          return listen.listenTo({ notes, known, a4, whose: 'bench' }, note);
        }
        case 'bare':
          listen.expect(note);
          return listen.listen();
        case 'practice':
          return listen.beginPractice(bench.subject.source);
      }
    },
    log(logged) {
      const bench = open.value;
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
    noBlows() {
      const bench = open.value;
      if (!bench) return;
      const { kept } = newestStep(bench.course);
      const now = { ...bench, course: noBlows(bench.course) };
      if (now.course === bench.course) return;
      show(now);
      showNewest(now);
      if (kept.blows !== null && bench.subject.kind === 'pan') {
        const id = recordId(identities.next());
        const head = { shape: 1, id, pan: bench.subject.pan, at: clock.now() } as const;
        void keeper.keep([{ ...head, kind: 'erasure', target: kept.blows }]);
      }
    },
    mark(mark) {
      const bench = open.value;
      if (!bench) return;
      const { note } = bench.course;
      const marks = new Map(bench.around.marks);
      if (mark === 'none') marks.delete(note);
      else marks.set(note, mark);
      show({ ...bench, around: { ...bench.around, marks } });
      if (bench.subject.kind !== 'pan') return;
      const id = recordId(identities.next());
      const head = { shape: 1, id, pan: bench.subject.pan, at: clock.now() } as const;
      void keeper.keep([{ ...head, kind: 'mark', round: null, note, mark }]);
    },
    keep: keepNewest,
    next() {
      keepNewest();
      const move = ahead.value;
      checkNote(move.kind === 'check' ? move.note : null);
      return move;
    },
    check: checkNote,
    leave() {
      keepNewest();
      isMine.value = false;
      void listen.stop();
    },
  };
}

const listed = <T>(value: T | null): readonly T[] => (value === null ? [] : [value]);

function isSame(one: BenchSubject, other: BenchSubject): boolean {
  if (one.note !== other.note || one.kind !== other.kind) return false;
  if (one.kind === 'pan' && other.kind === 'pan') return one.pan === other.pan;
  return !(one.kind === 'practice' && other.kind === 'practice') || one.source === other.source;
}

/** A bench that is shown already, with what its pan's records say now; what is still being written is in it. */
function broughtUpToDate(shown: OpenBench, read: OpenBench): OpenBench {
  const merged = <T extends { readonly id: string }>(kept: readonly T[], own: readonly T[]) => {
    const ids = new Set(kept.map(({ id }) => id));
    return [...kept, ...own.filter(({ id }) => !ids.has(id))];
  };
  return {
    ...shown,
    check: null,
    around: {
      ...read.around,
      readings: merged(read.around.readings, shown.around.readings),
      blows: merged(read.around.blows, shown.around.blows),
    },
  };
}

function unkeptBench(
  subject: Exclude<BenchSubject, { readonly kind: 'pan' }>,
  { a4 }: CardSettings,
  shown: OpenBench | null,
): OpenBench {
  // What was learnt on one note of a simulated pan helps with its others.
  const isSamePan =
    subject.kind === 'practice' &&
    shown?.subject.kind === 'practice' &&
    shown.subject.source === subject.source;
  return {
    subject,
    around: isSamePan
      ? shown.around
      : {
          name: '',
          layout: subject.kind === 'practice' ? subject.source.layout : null,
          a4,
          reference: cents(0),
          marks: new Map(),
          readings: [],
          blows: [],
        },
    course: courseAfter(subject.note, []),
    check: null,
  };
}

/** The note after this one in the work plan of its pan. */
function nextOfPlan(
  bench: OpenBench | null,
  work: { pan: PanId; notes: readonly MidiNote[] } | null,
): BenchMove {
  if (bench?.subject.kind !== 'pan' || work?.pan !== bench.subject.pan) return { kind: 'done' };
  const at = work.notes.indexOf(bench.course.note);
  const note = work.notes[at + 1];
  return note === undefined ? { kind: 'done' } : { kind: 'note', pan: work.pan, note };
}
