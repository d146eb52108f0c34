import { signal } from '@preact/signals';
import { describe, expect, it, vi } from 'vitest';
import type { Strike } from '../../../src/domain/measurement/strike';
import {
  panId,
  type RackRecord,
  type RoundWay,
  recordId,
  roundOf,
} from '../../../src/domain/records/rack-records';
import { strikeOf } from '../../../src/domain/records/strike-record';
import { isDone } from '../../../src/domain/rounds/round-progress';
import type { Announcement as NextHow } from '../../../src/domain/settings/settings';
import { frequencyOf } from '../../../src/domain/tuning/equal-temperament';
import {
  cents,
  decibels,
  hertz,
  instant,
  midiNote,
  seconds,
} from '../../../src/domain/tuning/units';
import { readWav } from '../../../src/dsp/read-wav';
import { createRecordTurns, turnedStore } from '../../../src/state/keeping/record-turns';
import { createUndoModel } from '../../../src/state/keeping/undo-model';
import { createListenModel } from '../../../src/state/listening/listen-model';
import { createRoundModel } from '../../../src/state/round/round-model';
import { panFieldsSample } from '../../domain/records/pan-fields-sample';
import { fakePorts } from '../fake-ports';
import { memoryPanStore } from '../memory-pan-store';

const pan = panId('pan');
const fields = panFieldsSample();
const settle = () => new Promise((done) => setTimeout(done, 0));

function strikeOn(note: number, off: number, event: number): Strike {
  const line = (order: number) => ({
    hz: hertz(order * frequencyOf(midiNote(note)) * 2 ** (off / 1200)),
    sigmaCents: cents(0.1),
    decaySeconds: seconds(0.4),
    levelDb: decibels(-20),
  });
  const record = {
    fundamental: line(1),
    isInferred: false,
    octave: line(2),
    octaveRival: null,
    third: null,
    glideCents: cents(3),
    peakDb: decibels(-8),
    loudness: 'good',
    alsoRinging: [],
  } as const;
  return strikeOf(record, { note: midiNote(note), a4: hertz(440), offset: cents(0) }, event);
}

function begun(way: RoundWay, how: NextHow = 'nothing') {
  const fake = fakePorts();
  const memory = memoryPanStore();
  const listen = createListenModel(fake.ports);
  const said: string[] = [];
  const keepsSound = signal(false);
  let named = 0;
  const ports = {
    store: memory.store,
    listen,
    settings: { a4: signal(hertz(440)), announcement: signal(how), keepsSound },
    announcer: {
      hasVoice: () => true,
      say: async (text: string) => void said.push(text),
      beep: async () => void said.push('beep'),
      hush: () => undefined,
    },
    clock: { now: () => instant(1000) },
    identities: { next: () => `id-${++named}` },
    turns: createRecordTurns(),
    undo: createUndoModel(() => new Promise(() => undefined)),
    appVersion: 'test',
    newsWords: (news: { kind: string }) => news.kind,
  };
  const model = createRoundModel(ports);
  const id = model.begin({
    pan,
    fields,
    way,
    conditions: { temperature: null, standing: 'settled' },
    earlier: [],
  });
  let event = 0;
  const strike = async (note: number, off = 0) => {
    event++;
    fake.hear(strikeOn(note, off, event));
    await settle();
  };
  const opened = async () => {
    await settle();
    fake.microphoneIs({ kind: 'listening', processing: [], sampleRate: 48_000 });
    return { fake, memory, listen, model, id, said, strike, ports, keepsSound };
  };
  return opened();
}

const openRound = (model: ReturnType<typeof createRoundModel>) => {
  const view = model.view.value;
  if (view.kind !== 'open') throw new Error(view.kind);
  return view.round;
};

describe('a guided round', () => {
  it('asks for the highest note first, keeps three strikes, and only then names the next', async () => {
    const { memory, listen, strike } = await begun('guided');
    expect(listen.expected.value).toBe(88);
    await strike(88, 4);
    await strike(88, 4.1);
    expect(memory.ofKind('reading')).toHaveLength(0);
    await strike(88, 3.9);
    expect(memory.ofKind('reading')).toMatchObject([
      { note: 88, taking: { source: 'microphone', sampleRate: 48_000, appVersion: 'test' } },
    ]);
    expect(memory.ofKind('reading')[0]?.strikes).toHaveLength(3);
    expect(listen.expected.value).toBe(76);
  });

  it('does not read back from the rack what it has kept itself', async () => {
    const { memory, model, strike } = await begun('guided');
    const reads = [vi.spyOn(memory.store, 'pan'), vi.spyOn(memory.store, 'readingsOfRound')];
    for (const off of [4, 4.1, 4]) await strike(88, off);
    model.mark('cracked');
    await settle();
    expect(memory.ofKind('reading')).toHaveLength(1);
    expect(memory.ofKind('mark')).toHaveLength(1);
    for (const read of reads) expect(read).not.toHaveBeenCalled();
  });

  it('goes on to the next note only when the last one is on disk', async () => {
    const { memory, model, listen, strike } = await begun('guided');
    memory.trouble.now = 'full';
    for (let n = 0; n < 3; n++) await strike(88);
    expect(model.saving.value).toEqual({ kind: 'not-kept', trouble: 'full' });
    expect(listen.expected.value).toBe(88);
    memory.trouble.now = null;
    await model.retry();
    await settle();
    expect(memory.ofKind('reading')).toHaveLength(1);
    expect(listen.expected.value).toBe(76);
  });

  it('keeps a second of sound with the reading where that is wanted', async () => {
    const { memory, strike, keepsSound } = await begun('guided');
    keepsSound.value = true;
    for (let n = 0; n < 3; n++) await strike(88);
    const [sound] = memory.attachments;
    expect(sound).toMatchObject({ kind: 'sound', type: 'audio/wav', pan });
    expect(memory.ofKind('reading')[0]?.sound).toBe(sound?.id);
    expect(readWav(sound?.bytes.buffer ?? new ArrayBuffer(0))).toMatchObject({
      kind: 'wav',
      sampleRate: 8000,
      channels: 1,
    });
  });

  it('says the next note after it is kept, and hears nothing meanwhile', async () => {
    const { said, strike } = await begun('guided', 'voice');
    for (let n = 0; n < 3; n++) await strike(88);
    expect(said).toEqual(['next']);
  });

  it('keeps a mark at one tap and goes on, and a cracked note needs no strike', async () => {
    const { model, memory, listen } = await begun('guided');
    model.mark('cracked');
    await settle();
    expect(memory.ofKind('mark')).toMatchObject([{ note: 88, mark: 'cracked' }]);
    expect(listen.expected.value).toBe(76);
  });

  it('keeps with a reading how many blows on its note were refused, and counts none while it is saved', async () => {
    const { fake, memory, model, strike } = await begun('guided');
    const rattle = (event: number): void =>
      fake.hear({
        kind: 'refused',
        event,
        at: seconds(event),
        reason: 'too-fast',
        note: null,
        candidates: [],
      });
    const knock = (event: number): void => fake.hear({ kind: 'knock', event, at: seconds(event) });
    rattle(10);
    rattle(20);
    knock(30);
    await strike(88);
    await strike(88);
    memory.trouble.now = 'full';
    await strike(88);
    // The next note has not been named yet.
    rattle(40);
    memory.trouble.now = null;
    await model.retry();
    await settle();
    rattle(50);
    expect(memory.ofKind('reading')[0]).toMatchObject({
      note: 88,
      refused: { knocks: 1, heardAsSeveral: 2 },
    });
    model.mark('dead');
    await settle();
    expect(memory.ofKind('mark')[0]).toMatchObject({
      note: 76,
      refused: { knocks: 0, heardAsSeveral: 1 },
    });
  });

  it('keeps no refused blows where none were heard, nor in a round that asks for no note', async () => {
    const guided = await begun('guided');
    for (let n = 0; n < 3; n++) await guided.strike(88);
    expect(guided.memory.ofKind('reading')[0]).not.toHaveProperty('refused');
    const free = await begun('free');
    free.fake.hear({ kind: 'knock', event: 50, at: seconds(50) });
    for (let n = 0; n < 3; n++) await free.strike(88);
    expect(free.memory.ofKind('reading')[0]).not.toHaveProperty('refused');
  });

  it('hears choked notes as notes in the round of a knock check, also when it is resumed', async () => {
    const { fake, memory, id, model, ports } = await begun('guided');
    expect(fake.contexts.at(-1)).not.toHaveProperty('mayBeChoked');
    const { start } = openRound(model);
    const head = { shape: 1 as const, pan, at: instant(1000) };
    await memory.store.keep([
      { ...head, kind: 'pan-edit', id: recordId('edit'), fields, replaces: [] },
      {
        ...head,
        kind: 'knock-check',
        id: recordId('check'),
        round: roundOf(start),
        looks: [],
        impact: null,
        remarks: '',
      },
    ]);
    const again = createRoundModel(ports);
    await again.open(pan, id);
    await again.listen();
    expect(fake.contexts.at(-1)).toMatchObject({ mayBeChoked: true });
  });

  it('is resumed where it was, with what had been kept', async () => {
    const { memory, model, id, strike, ports } = await begun('guided');
    for (let n = 0; n < 3; n++) await strike(88, 7);
    await strike(76);
    const { fields: kept, start } = openRound(model);
    await memory.store.keep([
      { ...start, kind: 'pan-edit', id: 'e' as never, fields: kept, replaces: [] },
    ]);
    const again = createRoundModel(ports);
    await again.open(pan, id);
    const round = openRound(again);
    expect(round.progress.notes.get(midiNote(88))?.isLocked).toBe(true);
    expect(round.progress.notes.get(midiNote(76))?.isLocked).toBe(false);
    expect(round.isOver).toBe(false);
  });

  it('takes a mark back, and asks for the note again', async () => {
    const { model, memory, ports } = await begun('guided');
    model.mark('dead');
    await settle();
    expect(ports.undo.offer.value?.done).toEqual({ kind: 'mark', note: 88, mark: 'dead' });
    ports.undo.takeBack();
    await settle();
    expect(isDone(openRound(model).kept, midiNote(88))).toBe(false);
    expect(memory.ofKind('mark').map(({ mark }) => mark)).toEqual(['dead', 'none']);
  });

  it('goes on after it was finished, once its end is erased', async () => {
    const { model, memory, id, strike } = await begun('guided');
    for (let n = 0; n < 3; n++) await strike(88);
    const { fields, start } = openRound(model);
    await memory.store.keep([
      { ...start, kind: 'pan-edit', id: 'e' as never, fields, replaces: [] },
    ]);
    model.finish();
    await settle();
    const [end] = memory.ofKind('round-end');
    if (!end) throw new Error('no end');
    const target = end.id;
    await memory.store.keep([{ ...end, kind: 'erasure', id: recordId('back'), target } as never]);
    await model.open(pan, id);
    expect(openRound(model).isOver).toBe(false);
    expect(isDone(openRound(model).kept, midiNote(88))).toBe(true);
  });

  it('ends by itself when every note is done', async () => {
    const { model, memory } = await begun('guided');
    for (let n = 0; n < 29; n++) {
      model.mark('skipped');
      await settle();
    }
    expect(openRound(model).isOver).toBe(true);
    expect(memory.ofKind('round-end')).toMatchObject([{ ending: 'finished' }]);
  });
});

describe('a quick round', () => {
  it('takes one strike a note, in any order, and makes no sound of its own between them', async () => {
    const { memory, said, strike, model } = await begun('quick', 'beep');
    const order = [60, 74, 88, 65, 79];
    for (const note of order) await strike(note, 3);
    expect(memory.ofKind('reading').map(({ note }) => note)).toEqual(order);
    expect(said).toEqual([]);
    expect(openRound(model).progress.order).toHaveLength(29);
  });

  it('keeps a second strike on a note as a newer reading of both', async () => {
    const { memory, strike } = await begun('quick');
    await strike(60, 3);
    await strike(60, 3.2);
    expect(memory.ofKind('reading').map(({ strikes }) => strikes.length)).toEqual([1, 2]);
  });

  it('is not ended by a strike, not even by the last one', async () => {
    const { model, memory, strike } = await begun('quick');
    for (const note of openRound(model).progress.order) await strike(note, 3);
    await strike(60, 9);
    expect(memory.ofKind('round-end')).toEqual([]);
    expect(openRound(model).isOver).toBe(false);
    model.finish();
    await settle();
    expect(memory.ofKind('round-end')).toMatchObject([{ ending: 'finished' }]);
  });

  it('that is ended by hand before anything was heard leaves no result', async () => {
    const { model, memory } = await begun('quick');
    model.finish();
    await settle();
    expect(memory.ofKind('round-end')).toMatchObject([{ ending: 'left' }]);
    expect(openRound(model).isOver).toBe(true);
  });
});

describe('a round that is shown in two windows', () => {
  async function twoWindows() {
    const first = await begun('free');
    const keptPan: RackRecord = {
      kind: 'pan-edit',
      shape: 1,
      id: recordId('edit'),
      pan,
      at: instant(1),
      fields,
      replaces: [],
    };
    await first.memory.store.keep([keptPan]);
    const fake = fakePorts();
    fake.turn.answer = 'other-window';
    const listen = createListenModel(fake.ports);
    let named = 0;
    const identities = { next: () => `other-${++named}` };
    const turns = createRecordTurns();
    const store = turnedStore(first.memory.store, turns);
    const model = createRoundModel({ ...first.ports, store, listen, identities, turns });
    await model.open(pan, first.id);
    return { first, second: { fake, listen, model } };
  }

  it('is followed by the window without the microphone, up to its end', async () => {
    const { first, second } = await twoWindows();
    await second.model.listen();
    expect(second.listen.microphone.value.kind).toBe('other-window');
    for (const off of [4, 4.1, 3.9]) await first.strike(88, off);
    await settle();
    expect(openRound(second.model).readings).toHaveLength(1);
    expect(isDone(openRound(second.model).progress, midiNote(88))).toBe(true);
    first.model.finish();
    await settle();
    await settle();
    expect(openRound(second.model).isOver).toBe(true);
  });

  it('goes on in the second window from where the first let go', async () => {
    const { first, second } = await twoWindows();
    for (const off of [4, 4.1, 3.9]) await first.strike(88, off);
    await first.listen.stop();
    second.fake.turn.answer = 'ours';
    await second.model.listen();
    second.fake.microphoneIs({ kind: 'listening', processing: [], sampleRate: 48_000 });
    for (const event of [1, 2, 3]) {
      second.fake.hear(strikeOn(86, 2 + event / 10, event));
      await settle();
    }
    await settle();
    const notes = first.memory.ofKind('reading').map(({ note }) => note);
    expect(notes).toEqual([88, 86]);
    expect(openRound(first.model).readings.map(({ note }) => note)).toEqual([88, 86]);
  });

  it('ends where it is ended in the other window, and the microphone goes off', async () => {
    const { first, second } = await twoWindows();
    for (const off of [4, 4.1, 3.9]) await first.strike(88, off);
    second.model.finish();
    await settle();
    await settle();
    expect(openRound(first.model).isOver).toBe(true);
    expect(first.listen.isListening.value).toBe(false);
  });
});
