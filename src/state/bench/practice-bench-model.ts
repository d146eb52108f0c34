// Practice with a hammer: a simulated pan of a chosen level and, in the end, what the hammering achieved.
import { type ReadonlySignal, signal } from '@preact/signals';
import { type PracticeOutcome, practiceOutcome } from '../../domain/bench/practice-outcome';
import type {
  HammeredSource,
  PatientOutcome,
  PracticeLevel,
  PracticePans,
} from '../../domain/ports/practice-port';
import type { BlowFirmness, BlowWhere } from '../../domain/records/blow-places';
import type { MidiNote } from '../../domain/tuning/units';
import type { Judged } from '../../domain/tuning/verdict';
import { createLatest } from '../asking/latest';
import type { ListenModel } from '../listening/listen-model';
import type { SettingsModel } from '../settings/settings-model';

export interface PracticeBenchPorts {
  readonly pans: PracticePans;
  readonly listen: Pick<ListenModel, 'beginPractice' | 'strikePractice' | 'stop'>;
  readonly settings: Pick<SettingsModel, 'a4' | 'limits' | 'bench'>;
  /** Waits long enough for the screen to be drawn. */
  readonly rest: () => Promise<void>;
}

/** A note that was hammered, and the blows it took. */
export interface WorkedNote {
  readonly note: MidiNote;
  readonly blows: number;
}

export interface PatientResult {
  readonly outcome: PracticeOutcome;
  readonly work: PatientOutcome['work'];
}

export type PracticeBenchView =
  | { readonly kind: 'levels' }
  | { readonly kind: 'loading' }
  /** The pan could not be loaded. */
  | { readonly kind: 'failed' }
  | {
      readonly kind: 'pan';
      readonly level: PracticeLevel;
      readonly source: HammeredSource;
      readonly before: readonly Judged[];
      /** In the order in which they were first hammered. */
      readonly worked: readonly WorkedNote[];
    }
  | {
      readonly kind: 'over';
      readonly level: PracticeLevel;
      readonly worked: readonly WorkedNote[];
      readonly outcome: PracticeOutcome;
      /** Null while it is worked out, and where nothing was hammered. */
      readonly patient: PatientResult | null;
    };

export interface PracticeBenchModel {
  readonly view: ReadonlySignal<PracticeBenchView>;
  begin(level: PracticeLevel): Promise<void>;
  /** The whole pan is heard again, not one note on the bench. */
  hearPan(): Promise<void>;
  strike(note: MidiNote): void;
  /** So many blows move the simulated metal. */
  hammer(note: MidiNote, where: BlowWhere, firmness: BlowFirmness, count: number): void;
  /** Ends the practice and compares; resolves when all of it is known. */
  finish(): Promise<void>;
  /** Back to the choice of a level. */
  leave(): void;
}

export function createPracticeBenchModel(ports: PracticeBenchPorts): PracticeBenchModel {
  const { listen, settings } = ports;
  const view = signal<PracticeBenchView>({ kind: 'levels' });
  const latest = createLatest();

  return {
    view,
    async begin(level) {
      const isLatest = latest.begin();
      view.value = { kind: 'loading' };
      try {
        const source = await ports.pans(level, settings.a4.value);
        if (!isLatest()) return;
        view.value = { kind: 'pan', level, source, before: source.tuning(), worked: [] };
        await listen.beginPractice(source);
      } catch {
        if (isLatest()) view.value = { kind: 'failed' };
      }
    },
    async hearPan() {
      if (view.value.kind === 'pan') await listen.beginPractice(view.value.source);
    },
    strike(note) {
      if (view.value.kind === 'pan') listen.strikePractice(view.value.source, note);
    },
    hammer(note, where, firmness, count) {
      const now = view.value;
      if (now.kind !== 'pan') return;
      now.source.hammer(note, where, firmness, count);
      const isNew = now.worked.every((each) => each.note !== note);
      const worked = isNew ? [...now.worked, { note, blows: 0 }] : now.worked;
      view.value = {
        ...now,
        worked: worked.map((each) =>
          each.note === note ? { ...each, blows: each.blows + count } : each,
        ),
      };
    },
    async finish() {
      const now = view.value;
      if (now.kind !== 'pan') return;
      const isLatest = latest.begin();
      const { level, source, before, worked } = now;
      const limits = settings.limits.value;
      const notes = worked.map(({ note }) => note);
      const outcome = practiceOutcome(before, source.tuning(), notes, limits);
      const over = { kind: 'over', level, worked, outcome } as const;
      view.value = { ...over, patient: null };
      void listen.stop();
      if (notes.length === 0) return;
      const { professional } = settings.bench.value;
      const patient = await source.patientWork(notes, { limits, professional }, ports.rest);
      if (!isLatest()) return;
      const reached = practiceOutcome(before, patient.tuning, notes, limits);
      view.value = { ...over, patient: { outcome: reached, work: patient.work } };
    },
    leave() {
      latest.drop();
      view.value = { kind: 'levels' };
      void listen.stop();
    },
  };
}
