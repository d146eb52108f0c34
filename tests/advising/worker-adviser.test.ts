import { afterEach, beforeEach, describe, expect, it, vi } from 'vitest';
import { WorkerAdviser } from '../../src/advising/worker-adviser';
import type { AdviceAnswer } from '../../src/domain/advice/answer-question';
import { usualProfessionalLimits } from '../../src/domain/advice/professional-limits';
import { answerOnBench, type BenchQuestion } from '../../src/domain/bench/answer-on-bench';
import { courseAfter } from '../../src/domain/bench/bench-course';
import { lowCLead } from '../../src/domain/pans/layouts/low-c-lead';
import type { NumberedAnswer, NumberedQuestion } from '../../src/domain/ports/adviser';
import { keptReading } from '../../src/domain/reading/kept-reading';
import { standardA4 } from '../../src/domain/tuning/equal-temperament';
import { usualTolerances } from '../../src/domain/tuning/tolerances';
import { cents, instant, midiNote } from '../../src/domain/tuning/units';
import { readingSample } from '../domain/rounds/round-sample';

/** Stands in for the thread; it answers when the test says so, and only copies pass. */
class FakeWorker {
  static opened: FakeWorker[] = [];
  readonly got: NumberedQuestion[] = [];
  terminated = false;
  onmessage: ((event: { data: NumberedAnswer }) => void) | null = null;
  onerror: ((event: { preventDefault: () => void }) => void) | null = null;

  constructor() {
    FakeWorker.opened.push(this);
  }
  postMessage(message: NumberedQuestion): void {
    this.got.push(structuredClone(message));
  }
  terminate(): void {
    this.terminated = true;
  }
  answer(at: number): void {
    const asked = this.got[at];
    if (!asked) throw new Error('not asked');
    const { ticket, question } = asked;
    this.onmessage?.({ data: structuredClone({ ticket, answer: answerOnBench(question) }) });
  }
}

function question(fundamental: number): BenchQuestion {
  const aim = { a4: standardA4, offset: cents(0) };
  const sample = readingSample(null, { note: 66, fundamental, octave: 0, third: 0 });
  const reading = keptReading(sample, aim);
  return {
    layout: lowCLead,
    judged: {
      note: midiNote(66),
      fundamental: { cents: cents(fundamental), sigmaCents: cents(0.2) },
      octave: null,
      octaveRival: null,
      third: null,
    },
    reading,
    course: courseAfter(midiNote(66), []),
    marks: new Map(),
    readings: [sample],
    blows: [],
    rules: { limits: usualTolerances, professional: usualProfessionalLimits },
    now: instant(0),
  };
}

const only = (): FakeWorker => {
  const [worker] = FakeWorker.opened;
  if (!worker) throw new Error('no thread was begun');
  return worker;
};

beforeEach(() => {
  FakeWorker.opened = [];
  vi.stubGlobal('Worker', FakeWorker);
  vi.useFakeTimers();
});
afterEach(() => {
  vi.unstubAllGlobals();
  vi.useRealTimers();
});

describe('the thread of the advice', () => {
  it('is begun with the first question, and answers each by its number', () => {
    const adviser = new WorkerAdviser();
    expect(FakeWorker.opened).toHaveLength(0);
    const told: AdviceAnswer[] = [];
    adviser.ask(question(-12), (answer) => told.push(answer));
    adviser.ask(question(0), (answer) => told.push(answer));
    expect(FakeWorker.opened).toHaveLength(1);
    only().answer(1);
    only().answer(0);
    expect(told.map(({ advice }) => advice.kind)).toEqual(['leave', 'blows']);
    expect(told[1]).toEqual(structuredClone(answerOnBench(question(-12))));
  });

  it('is not missed when it dies: the page answers, then and later', async () => {
    const adviser = new WorkerAdviser();
    const told: string[] = [];
    const tell = ({ advice }: AdviceAnswer) => told.push(advice.kind);
    adviser.ask(question(-12), tell);
    only().onerror?.({ preventDefault: () => undefined });
    expect(only().terminated).toBe(true);
    adviser.ask(question(0), tell);
    await vi.dynamicImportSettled();
    expect(told).toEqual(['blows', 'leave']);
    expect(FakeWorker.opened).toHaveLength(1);
  });

  it('is given up when it does not answer', async () => {
    const told: string[] = [];
    new WorkerAdviser().ask(question(-60), ({ advice }) => told.push(advice.kind));
    vi.advanceTimersByTime(4001);
    await vi.dynamicImportSettled();
    expect(told).toEqual(['professional']);
  });
});
