import { signal } from '@preact/signals';
import { describe, expect, it } from 'vitest';
import { answerOnBench } from '../../../src/domain/bench/answer-on-bench';
import {
  effectOfNewest,
  newestReading,
  openingReading,
} from '../../../src/domain/bench/bench-course';
import type { Strike } from '../../../src/domain/measurement/strike';
import { type LoggedBlows, panId, recordId } from '../../../src/domain/records/rack-records';
import { withoutErased } from '../../../src/domain/records/standing/without-erased';
import { strikeOf } from '../../../src/domain/records/strike-record';
import { usualBenchSettings } from '../../../src/domain/settings/bench-settings';
import type { Settings } from '../../../src/domain/settings/settings';
import { frequencyOf } from '../../../src/domain/tuning/equal-temperament';
import { usualTolerances } from '../../../src/domain/tuning/tolerances';
import {
  cents,
  decibels,
  hertz,
  instant,
  midiNote,
  seconds,
} from '../../../src/domain/tuning/units';
import { createPracticePan } from '../../../src/practice-pan/practice-pan';
import { type BenchPorts, createBenchModel } from '../../../src/state/bench/bench-model';
import type { BenchSubject } from '../../../src/state/bench/open-bench';
import { createRecordTurns } from '../../../src/state/keeping/record-turns';
import { createListenModel } from '../../../src/state/listening/listen-model';
import { sampleEdit } from '../../storage/rack/rack-sample';
import { fakePorts } from '../fake-ports';
import { memoryPanStore } from '../memory-pan-store';

const pan = panId('pan');
const d5 = midiNote(74);
const a5 = midiNote(81);
const onD5: BenchSubject = { kind: 'pan', pan, note: d5 };
const ends: LoggedBlows = { place: 'long-ends', side: 'above', firmness: 'light' };
const settle = () => new Promise((done) => setTimeout(done, 0));

/** Cents of the fundamental against equal temperament, of octave and third against the own fundamental. */
type Off = readonly [fundamental: number, octave: number, third: number];

function strikeOn(note: number, [off, octave, third]: Off, event: number): Strike {
  const own = frequencyOf(midiNote(note)) * 2 ** (off / 1200);
  const line = (order: number, away: number) => ({
    hz: hertz(order * own * 2 ** (away / 1200)),
    sigmaCents: cents(0.1),
    decaySeconds: seconds(0.4),
    levelDb: decibels(-20),
  });
  const record = {
    fundamental: line(1, 0),
    isInferred: false,
    octave: line(2, octave),
    octaveRival: null,
    third: { ...line(4, third), kind: 'double-octave' },
    glideCents: cents(3),
    peakDb: decibels(-8),
    loudness: 'good',
    alsoRinging: [],
  } as const;
  return strikeOf(record, { note: midiNote(note), a4: hertz(440), offset: cents(0) }, event);
}

async function begun(subject: BenchSubject = onD5, chosen: Partial<Settings> = {}) {
  const fake = fakePorts();
  const memory = memoryPanStore();
  await memory.store.keep([sampleEdit('edit', 'Heron', pan)]);
  const listen = createListenModel(fake.ports);
  const bench = signal({ ...usualBenchSettings, ...chosen });
  const judging = signal({
    a4: hertz(440),
    reference: 'band' as const,
    limits: usualTolerances,
  });
  let named = 0;
  let questions = 0;
  let now = 1_000_000;
  const ports: BenchPorts = {
    store: memory.store,
    listen,
    settings: {
      judging,
      keepsSound: signal(false),
      bench,
      set: (changes) => {
        bench.value = { ...bench.value, ...changes };
      },
    },
    clock: { now: () => instant(now) },
    identities: { next: () => `id-${++named}` },
    turns: createRecordTurns(),
    appVersion: 'test',
    adviser: {
      ask(question, tell) {
        questions++;
        tell(answerOnBench(question));
      },
    },
  };
  const model = createBenchModel(ports);
  await model.open(subject);
  const start = async (which = model) => {
    await which.listen();
    await settle();
    fake.microphoneIs({ kind: 'listening', processing: [], sampleRate: 48_000 });
  };
  await start();
  let event = 0;
  const later = (): void => {
    now += 60_000;
  };
  const strike = async (off: Off, note: number = d5) => {
    later();
    event++;
    fake.hear({ ...strikeOn(note, off, event), provisional: true });
    fake.hear(strikeOn(note, off, event));
    await settle();
  };
  const strikes = async (off: Off, note: number = d5) => {
    for (const by of [0, 0.1, -0.1]) await strike([off[0] + by, off[1], off[2]], note);
  };
  const knocks = async (count: number) => {
    for (let n = 0; n < count; n++) {
      later();
      event++;
      fake.hear({ kind: 'knock', event, at: seconds(event) });
    }
    await settle();
  };
  /** What is kept and in force. */
  const kept = async () => {
    const records = await memory.store.pan(pan);
    if (records.kind !== 'loaded') throw new Error('nothing is kept');
    const { blows, erasures } = withoutErased(records.value);
    const gone = new Set(erasures.map(({ target }) => target));
    return { blows, readings: memory.ofKind('reading').filter(({ id }) => !gone.has(id)) };
  };
  return {
    fake,
    memory,
    listen,
    model,
    ports,
    bench,
    start,
    strike,
    strikes,
    knocks,
    kept,
    later,
    asked: () => questions,
  };
}

const opened = (model: ReturnType<typeof createBenchModel>) => {
  const view = model.view.value;
  if (view.kind !== 'open') throw new Error(view.kind);
  return view.bench;
};

describe('the bench of a note', () => {
  it('hears that note only, and names it', async () => {
    const { listen, model, strike } = await begun();
    expect(listen.expected.value).toBe(74);
    expect(model.phase.value.kind).toBe('listening');
    await strike([-12, 1, 2], a5);
    expect(newestReading(opened(model).course)).toBeNull();
  });

  it('keeps a reading when three strikes agree, and one that has not settled when it is told to', async () => {
    const { model, strike, kept } = await begun();
    await strike([-12, 1, 2]);
    expect((await kept()).readings).toHaveLength(0);
    model.keep();
    await settle();
    expect((await kept()).readings.map(({ strikes }) => strikes.length)).toEqual([1]);
    await strike([-12.1, 1, 2]);
    await strike([-11.9, 1, 2]);
    // The fuller reading takes the place of the other: one set of strikes is one reading.
    expect((await kept()).readings.map(({ strikes }) => strikes.length)).toEqual([3]);
  });

  it('counts blows as one set between two readings and takes none for a strike', async () => {
    const { model, strikes, knocks, kept } = await begun();
    await strikes([-12, 1, 2]);
    await knocks(4);
    expect(opened(model).course.steps.at(-1)?.blows?.count).toBe(4);
    // The verdict stays while the hammer works.
    expect(model.phase.value.kind).toBe('settled');
    await strikes([-8, 0, 2]);
    const { blows, readings } = await kept();
    expect(blows).toMatchObject([{ count: 4, logged: null, note: 74 }]);
    expect(blows[0]?.before).toBe(readings[0]?.id);
    expect(blows[0]?.after).toBe(readings[1]?.id);
    expect(readings.map(({ strikes }) => strikes.length)).toEqual([3, 3]);
  });

  it('says after the next settled strike what the blows did, and calls little no change', async () => {
    const { model, strikes, strike, knocks } = await begun();
    await strikes([-12, 1, 2]);
    await knocks(3);
    // Against fixed targets: fundamental −12 → −8, octave −11 → −8, third −10 → −9.8.
    await strike([-8, 0, -1.8]);
    const effect = effectOfNewest(opened(model).course);
    expect(effect?.changes.map(({ cents }) => Math.round(cents * 10) / 10)).toEqual([4, 3, 0.2]);
    expect(effect?.changes.map(({ isSure }) => isSure)).toEqual([true, true, false]);
    for (const { within } of effect?.changes ?? []) expect(within).toBeGreaterThan(0.2);
  });

  it('shows the reading after blows by itself, not mixed with the one before', async () => {
    const { model, strikes, strike, knocks } = await begun();
    await strikes([-12, 1, 2]);
    await knocks(3);
    await strike([-8, 0, 2]);
    expect(newestReading(opened(model).course)?.fundamental.cents).toBeCloseTo(-8, 5);
    expect(openingReading(opened(model).course)?.fundamental.cents).toBeCloseTo(-12, 1);
  });

  it('ignores blows before the first strike: there is nothing they could be compared with', async () => {
    const { model, knocks } = await begun();
    await knocks(3);
    model.log(ends);
    expect(opened(model).course.steps).toHaveLength(1);
  });

  it('takes a first look back that turns out to be a blow', async () => {
    const { fake, model, strikes } = await begun();
    await strikes([-12, 1, 2]);
    fake.hear({ ...strikeOn(74, [-3, 0, 0], 9), provisional: true });
    fake.hear({ kind: 'knock', event: 9, at: seconds(9) });
    expect(model.phase.value).toMatchObject({ kind: 'settled' });
    expect(newestReading(opened(model).course)?.fundamental.cents).toBeCloseTo(-12, 1);
    expect(opened(model).course.steps.at(-1)?.blows?.count).toBe(1);
  });

  it('begins a step of its own when the note has moved though nobody heard blows', async () => {
    const { model, strikes, strike } = await begun();
    await strikes([-12, 1, 2]);
    await strike([-5, 1, 2]);
    await strike([-5.1, 1, 2]);
    const { steps } = opened(model).course;
    expect(steps).toHaveLength(2);
    expect(steps[0]?.reading?.fundamental.cents).toBeCloseTo(-12, 1);
    expect(steps[1]?.blows).toBeNull();
  });

  it('goes on after the microphone was lost, with the number of events begun anew', async () => {
    const { fake, model, strike, start } = await begun();
    await strike([-12, 1, 2]);
    fake.microphoneIs({ kind: 'interrupted' });
    await settle();
    await start();
    fake.hear(strikeOn(74, [-12.1, 1, 2], 1));
    fake.hear(strikeOn(74, [-11.9, 1, 2], 2));
    expect(newestReading(opened(model).course)).toMatchObject({ settled: true });
    expect(newestReading(opened(model).course)?.strikes).toHaveLength(3);
  });

  it('keeps what was heard when the microphone is taken away', async () => {
    const { fake, strike, kept } = await begun();
    await strike([-12, 1, 2]);
    fake.microphoneIs({ kind: 'interrupted' });
    await settle();
    expect((await kept()).readings).toHaveLength(1);
  });

  it('shows its trail when it is opened again the same day, and begins anew the next', async () => {
    const { model, strikes, knocks, ports } = await begun();
    await strikes([-12, 1, 2]);
    await knocks(3);
    model.log(ends);
    await strikes([-8, 0, 2]);
    model.leave();
    await settle();
    const again = createBenchModel(ports);
    await again.open(onD5);
    const { steps } = opened(again).course;
    expect(steps.map(({ reading }) => Math.round(reading?.fundamental.cents ?? 99))).toEqual([
      -12, -8, 99,
    ]);
    expect(steps[1]?.blows).toMatchObject({ count: 3, logged: ends });
    expect(effectOfNewest(opened(again).course)?.changes[0]?.cents).toBeCloseTo(4, 1);
    const nextDay = createBenchModel({
      ...ports,
      clock: { now: () => instant(1_000_000 + 86_400_000) },
    });
    await nextDay.open(onD5);
    expect(opened(nextDay).course.steps).toHaveLength(1);
  });

  it('still waits for the strike after blows when the app was closed in between', async () => {
    const { model, strikes, knocks, ports, start, kept } = await begun();
    await strikes([-12, 1, 2]);
    await knocks(2);
    model.log(ends);
    model.leave();
    await settle();
    const again = createBenchModel(ports);
    await again.open(onD5);
    await start(again);
    expect(opened(again).course.steps.at(-1)?.blows).toMatchObject({ count: 2, logged: ends });
    await strikes([-8, 0, 2]);
    const { blows, readings } = await kept();
    expect(blows).toHaveLength(1);
    expect(blows[0]?.after).toBe(readings.at(-1)?.id);
  });

  it('says that a note or a pan is not there', async () => {
    const { model } = await begun({ kind: 'pan', pan, note: midiNote(30) });
    expect(model.view.value.kind).toBe('missing');
    await model.open({ kind: 'pan', pan: panId('other'), note: d5 });
    expect(model.view.value.kind).toBe('missing');
  });
});

describe('logging blows', () => {
  it('costs one tap, which is remembered', async () => {
    const { model, strikes, knocks, kept, bench } = await begun();
    await strikes([-12, 1, 2]);
    await knocks(3);
    model.log(ends);
    await strikes([-8, 0, 2]);
    expect((await kept()).blows).toMatchObject([{ logged: ends, count: 3 }]);
    expect(bench.value.lastBlows).toEqual(ends);
  });

  it('costs none where the blows that are heard are to be logged as the last ones', async () => {
    const { strikes, knocks, kept } = await begun(onD5, { lastBlows: ends, repeatsBlows: true });
    await strikes([-12, 1, 2]);
    await knocks(3);
    await strikes([-8, 0, 2]);
    expect((await kept()).blows).toMatchObject([{ logged: ends, count: 3 }]);
  });

  it('can be done after the strike as well', async () => {
    const { model, strikes, knocks, kept } = await begun();
    await strikes([-12, 1, 2]);
    await knocks(3);
    await strikes([-8, 0, 2]);
    model.log(ends);
    await settle();
    expect((await kept()).blows).toMatchObject([{ logged: ends, count: 3 }]);
    expect((await kept()).readings).toHaveLength(2);
  });

  it('of blows that nobody heard begins a set without a count', async () => {
    const { model, strikes, kept } = await begun();
    await strikes([-12, 1, 2]);
    model.log(ends);
    await strikes([-8, 0, 2]);
    expect((await kept()).blows).toMatchObject([{ logged: ends, count: null }]);
  });

  it('is taken back where what was heard were no blows', async () => {
    const { model, strikes, strike, knocks, kept } = await begun();
    await strikes([-12, 1, 2]);
    await knocks(1);
    model.noBlows();
    await strike([-12, 1, 2]);
    model.keep();
    await settle();
    expect((await kept()).blows).toEqual([]);
    expect((await kept()).readings.map(({ strikes: all }) => all.length)).toEqual([4]);
  });
});

describe('what must be checked afterwards', () => {
  const worked = async () => {
    const made = await begun();
    await made.strikes([-12, 1, 2]);
    await made.knocks(3);
    await made.strikes([-4, 0, 2]);
    return made;
  };

  it('is empty until blows have fallen, then the neighbours and the ring partners', async () => {
    const { model, strikes, knocks } = await begun();
    await strikes([-12, 1, 2]);
    expect(model.checks.value).toEqual([]);
    await knocks(1);
    const kinds = model.checks.value.map(({ disturbed }) => disturbed.kind);
    expect(kinds).toContain('neighbour');
    expect(kinds).toContain('ring-partner');
    expect(model.checks.value.map(({ disturbed }) => disturbed.note)).toContain(86);
  });

  it('is walked through note by note, each asked for when the one before has settled', async () => {
    const { model, listen, strikes, kept } = await worked();
    const notes = model.checks.value.map(({ disturbed }) => disturbed.note);
    expect(model.ahead.value).toEqual({ kind: 'check', note: notes[0] });
    expect(model.next()).toEqual({ kind: 'check', note: notes[0] });
    for (const note of notes) {
      expect(listen.expected.value).toBe(note);
      await strikes([1, 1, 1], note);
    }
    expect(opened(model).check).toBeNull();
    expect(listen.expected.value).toBe(74);
    expect(model.checks.value.every(({ now }) => now !== null)).toBe(true);
    expect(model.ahead.value).toEqual({ kind: 'done' });
    expect((await kept()).readings.map(({ note }) => note)).toEqual([74, 74, ...notes]);
  });

  it('shows what the work did to a neighbour that was measured before it', async () => {
    const { model, strikes, ports, start } = await begun({ kind: 'pan', pan, note: midiNote(86) });
    await strikes([2, 1, 1], 86);
    model.leave();
    await settle();
    const work = createBenchModel(ports);
    await work.open(onD5);
    await start(work);
    await strikes([-12, 1, 2]);
    work.hammered(3, ends);
    await strikes([-4, 0, 2]);
    work.check(midiNote(86));
    await strikes([-3, 1, 1], 86);
    const check = work.checks.value.find(({ disturbed }) => disturbed.note === 86);
    expect(check?.changes[0]?.cents).toBeCloseTo(-5, 1);
    expect(check?.changes[0]?.isSure).toBe(true);
  });

  it('must be done again after further blows', async () => {
    const { model, strikes, knocks } = await worked();
    const [first] = model.checks.value;
    if (!first) throw new Error('nothing to check');
    model.check(first.disturbed.note);
    await strikes([1, 1, 1], first.disturbed.note);
    model.check(null);
    expect(model.checks.value[0]?.now).not.toBeNull();
    await knocks(2);
    expect(model.checks.value[0]?.now).toBeNull();
  });
});

describe('suggestions', () => {
  it('are not made before the user has confirmed', async () => {
    const { model, strikes, bench } = await begun();
    await strikes([-12, -8, 3]);
    expect(model.advice.value).toBeNull();
    bench.value = { ...bench.value, isTrained: true };
    expect(model.advice.value?.advice.kind).toBe('blows');
    bench.value = { ...bench.value, suggestsBlows: false };
    expect(model.advice.value).toBeNull();
  });

  it('are computed anew only when something they depend on has changed', async () => {
    const { model, strikes, bench, asked } = await begun(onD5, { isTrained: true });
    await strikes([-12, -8, 3]);
    const [before, shown] = [asked(), model.advice.value];
    bench.value = { ...bench.value, repeatsBlows: true, lastBlows: ends };
    expect(asked()).toBe(before);
    expect(model.advice.value).toBe(shown);
    const { professional } = bench.value;
    bench.value = { ...bench.value, professional: { ...professional, farthest: cents(10) } };
    expect(asked()).toBe(before + 1);
    expect(model.advice.value?.advice.kind).toBe('professional');
  });

  it('that come late are not shown for what the note was before', async () => {
    const { model, strikes, ports, start } = await begun(onD5, { isTrained: true });
    model.leave();
    const waiting: (() => void)[] = [];
    const slow = createBenchModel({
      ...ports,
      adviser: { ask: (question, tell) => waiting.push(() => tell(answerOnBench(question))) },
    });
    await slow.open(onD5);
    await start(slow);
    await strikes([-12, -8, 3]);
    expect(slow.advice.value).toBeNull();
    waiting.at(-2)?.();
    expect(slow.advice.value).toBeNull();
    waiting.at(-1)?.();
    expect(slow.advice.value?.advice.kind).toBe('blows');
  });

  it.each(['cracked', 'dead'] as const)('are never made for a note marked %s', async (mark) => {
    const { model, strikes, kept, memory } = await begun(onD5, { isTrained: true });
    await strikes([-12, -8, 3]);
    expect(model.advice.value?.advice.kind).toBe('blows');
    model.mark(mark);
    await settle();
    expect(model.advice.value?.advice.kind).not.toBe('blows');
    expect(memory.ofKind('mark')).toMatchObject([{ note: 74, mark }]);
    expect((await kept()).readings).toHaveLength(1);
  });

  it('stay while blows fall, and come anew with the strike', async () => {
    const { model, strikes, knocks, asked } = await begun(onD5, { isTrained: true });
    await strikes([-12, -8, 3]);
    const before = model.advice.value?.advice;
    await knocks(2);
    expect(model.advice.value?.advice).toEqual(before);
    const questions = asked();
    await knocks(2);
    expect(asked()).toBe(questions);
    await strikes([-9, -8, 3]);
    expect(model.advice.value?.advice.kind).toBe('blows');
    expect(model.advice.value?.advice).not.toEqual(before);
    model.next();
    expect(model.advice.value).toBeNull();
  });

  it('can be logged as they were made, also once the strike has answered the blows', async () => {
    const { model, strikes, knocks, kept } = await begun(onD5, { isTrained: true });
    await strikes([-12, -8, 3]);
    const made = model.suggested.value;
    expect(made).toMatchObject({ place: 'long-ends', side: 'above' });
    await knocks(2);
    await strikes([-9, -4, 3]);
    expect(model.suggested.value).toEqual(made);
    if (made) model.log({ place: made.place, side: made.side, firmness: made.firmness });
    await settle();
    expect((await kept()).blows).toMatchObject([{ count: 2, logged: { place: 'long-ends' } }]);
    // A set that nobody has heard would be the next one.
    expect(model.suggested.value?.place).toBe(
      model.advice.value?.advice.kind === 'blows' ? model.advice.value.advice.place : undefined,
    );
  });

  it('see a mark that was made elsewhere when the bench is opened again', async () => {
    const { model, strikes, memory } = await begun(onD5, { isTrained: true });
    await strikes([-12, -8, 3]);
    model.leave();
    await memory.store.keep([
      {
        kind: 'mark',
        shape: 1,
        id: recordId('elsewhere'),
        pan,
        at: instant(2_000_000),
        round: null,
        note: d5,
        mark: 'cracked',
      },
    ]);
    await model.open(onD5);
    expect(model.advice.value?.advice).toMatchObject({
      kind: 'professional',
      why: { kind: 'cracked', note: 74 },
    });
  });
});

describe('what comes next on the bench', () => {
  it('is a strike, then blows as suggested, then a strike, and moving on when the note is right', async () => {
    const { model, strike, strikes, knocks } = await begun(onD5, { isTrained: true });
    expect(model.main.value).toEqual({ kind: 'strike', note: 74 });
    await strike([-12, -8, 3]);
    expect(model.main.value).toEqual({ kind: 'strike', note: 74 });
    await strikes([-12, -8, 3]);
    expect(model.main.value).toMatchObject({
      kind: 'as-suggested',
      blows: { place: 'long-ends', side: 'above' },
    });
    await knocks(2);
    expect(model.main.value.kind).toBe('as-suggested');
    model.log(ends);
    expect(model.main.value).toEqual({ kind: 'strike', note: 74 });
    await strikes([1, 1, 1]);
    expect(model.main.value.kind).toBe('move');
    model.stop();
    expect(model.main.value).toEqual({ kind: 'listen' });
  });

  it('is to say where the blows fell for those to whom nothing is suggested', async () => {
    const { model, strikes, knocks } = await begun();
    await strikes([-12, -8, 3]);
    expect(model.main.value.kind).toBe('move');
    await knocks(2);
    expect(model.main.value).toEqual({ kind: 'say-where' });
  });
});

describe('the microphone of the bench', () => {
  const onA5: BenchSubject = { kind: 'pan', pan, note: a5 };

  it('comes on by itself where it was on a moment ago, and says so until something is heard', async () => {
    const { fake, model, strikes, strike } = await begun();
    await strikes([-12, -8, 3]);
    model.leave();
    await settle();
    await model.open(onA5);
    await settle();
    fake.microphoneIs({ kind: 'listening', processing: [], sampleRate: 48_000 });
    expect(model.isHearing.value).toBe(true);
    expect(model.cameOn.value).toBe(true);
    await strike([1, 0, 0], a5);
    expect(model.cameOn.value).toBe(false);
  });

  it('stays off when it was turned off, and the verdict stays', async () => {
    const { model, strikes } = await begun();
    await strikes([-12, -8, 3]);
    model.stop();
    await settle();
    expect(model.phase.value.kind).toBe('settled');
    model.leave();
    await settle();
    await model.open(onA5);
    expect(model.isHearing.value).toBe(false);
    expect(model.cameOn.value).toBe(false);
  });

  it('stays off after more than a moment', async () => {
    const { model, later } = await begun();
    model.leave();
    await settle();
    later();
    later();
    await model.open(onA5);
    await settle();
    expect(model.isHearing.value).toBe(false);
    expect(model.cameOn.value).toBe(false);
  });

  it('does not come on for a bench that was left before its pan was read', async () => {
    const { listen, model } = await begun();
    model.leave();
    await settle();
    const opening = model.open(onA5);
    model.leave();
    await opening;
    await settle();
    expect(listen.microphone.value.kind).toBe('idle');
  });
});

describe('a bench without a pan', () => {
  it('reads, counts and compares, and keeps nothing', async () => {
    const { model, strikes, knocks, memory } = await begun({ kind: 'bare', note: d5 });
    const before = memory.records.length;
    await strikes([-12, 1, 2]);
    await knocks(2);
    await strikes([-8, 0, 2]);
    expect(effectOfNewest(opened(model).course)?.changes[0]?.cents).toBeCloseTo(4, 1);
    model.leave();
    await settle();
    expect(memory.records).toHaveLength(before);
  });
});

describe('the bench of a simulated pan', () => {
  it('is struck and hammered without a microphone, learns, and keeps nothing', async () => {
    const source = createPracticePan(3);
    const { model, strikes, memory, listen } = await begun(
      { kind: 'practice', source, note: d5 },
      { isTrained: true },
    );
    const before = memory.records.length;
    expect(listen.taking.value.source).toBe('practice');
    await strikes([-12, -8, 3]);
    expect(model.advice.value?.advice.kind).toBe('blows');
    model.hammered(3, ends);
    await strikes([-8, -6, 3]);
    expect(effectOfNewest(opened(model).course)?.blows).toMatchObject({ count: 3, logged: ends });
    expect(opened(model).around.blows).toHaveLength(1);
    expect(memory.records).toHaveLength(before);
  });
});

describe('looking inside a strike from the bench', () => {
  it('is offered for a strike on its own note, also after it was left, and until another listening', async () => {
    const { model, listen, strike, start } = await begun();
    expect(model.newest.value).toBeNull();
    await strike([-12, 1, 2], a5);
    expect(model.newest.value).toBeNull();
    await strike([-12, 1, 2]);
    expect(model.newest.value).toBe(listen.last.value?.strike);
    model.leave();
    await settle();
    expect(model.newest.value?.note).toBe(d5);
    await start();
    expect(model.newest.value).toBeNull();
  });

  it('leads back to the bench as it was, which hears on', async () => {
    const { fake, model, strike, strikes, later } = await begun();
    await strikes([-12, 1, 2]);
    model.lookInside();
    const looked = model.newest.value;
    model.leave();
    if (!looked) throw new Error('there is no strike');
    expect(model.isLookedInto(looked)).toBe(true);
    // Longer away than the bench would come on by itself.
    later();
    later();
    await model.listen();
    await model.open(onD5);
    fake.microphoneIs({ kind: 'listening', processing: [], sampleRate: 48_000 });
    expect(model.isHearing.value).toBe(true);
    expect(model.isLookedInto(looked)).toBe(false);
    await strike([-12, 1, 2]);
    expect(newestReading(opened(model).course)?.strikes).toHaveLength(4);
  });

  it('does not lead back here for a strike that was looked into from elsewhere', async () => {
    const { model, listen, strike } = await begun();
    await strike([-12, 1, 2]);
    model.leave();
    await settle();
    const strikeHeard = listen.last.value?.strike;
    if (!strikeHeard) throw new Error('there is no strike');
    expect(model.isLookedInto(strikeHeard)).toBe(false);
  });
});
