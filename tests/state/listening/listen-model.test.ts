import { describe, expect, it } from 'vitest';
import { lowCLead } from '../../../src/domain/pans/layouts/low-c-lead';
import { hertz, midiNote } from '../../../src/domain/tuning/units';
import { createListenModel } from '../../../src/state/listening/listen-model';
import { strikeSample } from '../../domain/reading/strike-sample';
import { anyFile, fakePorts } from '../fake-ports';

const openMicrophone = { kind: 'listening', processing: [], sampleRate: 48_000 } as const;

async function listening() {
  const fake = fakePorts();
  const model = createListenModel(fake.ports);
  await model.listen();
  fake.microphoneIs(openMicrophone);
  return { fake, model };
}

describe('listening', () => {
  it('asks for a strike only while the microphone is open, and keeps the screen on meanwhile', async () => {
    const fake = fakePorts();
    const model = createListenModel(fake.ports);
    await model.listen();
    expect(model.phase.value.kind).toBe('idle');
    fake.microphoneIs(openMicrophone);
    expect(model.phase.value.kind).toBe('listening');
    expect(fake.light.at(-1)).toBe(true);
    fake.microphoneIs({ kind: 'lost' });
    expect(model.phase.value.kind).toBe('idle');
    expect(fake.light.at(-1)).toBe(false);
  });

  it('leaves the microphone to another window that has it, and says so', async () => {
    const fake = fakePorts();
    fake.turn.answer = 'other-window';
    const model = createListenModel(fake.ports);
    await model.listen();
    expect(model.microphone.value.kind).toBe('other-window');
    expect(model.isBusy.value).toBe(false);
    fake.turn.answer = 'ours';
    await model.listen();
    expect(model.microphone.value.kind).toBe('asking');
  });

  it('gives its turn back when the microphone is lost', async () => {
    const { fake } = await listening();
    const before = fake.turn.released;
    fake.microphoneIs({ kind: 'lost' });
    expect(fake.turn.released).toBeGreaterThan(before);
  });

  it('gives its turn back when it is left before the microphone was open', async () => {
    const fake = fakePorts();
    // A microphone that was never opened has nothing to tell when it is stopped.
    const microphone = { ...fake.ports.microphone, stop: async () => undefined };
    const model = createListenModel({ ...fake.ports, microphone });
    const asked = model.listen();
    await model.stop();
    await asked;
    expect(fake.turn.released).toBe(1);
  });

  it('does not count what it says itself', async () => {
    const { fake, model } = await listening();
    let over = () => {};
    const deaf = model.ignoreDuring(
      new Promise((done) => {
        over = done;
      }),
    );
    fake.hear(strikeSample({ event: 1, provisional: true }));
    over();
    await deaf;
    fake.hear(strikeSample({ event: 1 }));
    expect(model.phase.value.kind).toBe('listening');
    fake.hear(strikeSample({ event: 2 }));
    expect(model.phase.value.kind).toBe('heard');
  });

  it("tells the ear a pan's notes and what is known of them until something else is heard", async () => {
    const fake = fakePorts();
    const model = createListenModel(fake.ports);
    const notes = [midiNote(60), midiNote(62)];
    await model.listenTo({ notes, known: [], a4: hertz(442) }, midiNote(62));
    expect(fake.contexts.at(-1)).toMatchObject({ a4: 442, notes, expected: 62 });
    expect(fake.contexts.at(-1)).not.toHaveProperty('mayBeChoked');
    await model.listenTo({ notes, known: [], a4: hertz(442), mayBeChoked: true }, midiNote(62));
    expect(fake.contexts.at(-1)).toMatchObject({ expected: 62, mayBeChoked: true });
    const known = [{ note: midiNote(60), fundamentalHz: hertz(262), octaveHz: null }];
    model.knowNow(known);
    expect(fake.contexts.at(-1)).toMatchObject({ known });
    await model.stop();
    await model.listen();
    expect(fake.contexts.at(-1)).toMatchObject({ a4: 440, notes: null, expected: null });
  });

  it('holds a verdict when the microphone is lost', async () => {
    const { fake, model } = await listening();
    fake.hear(strikeSample());
    fake.microphoneIs({ kind: 'interrupted' });
    expect(model.phase.value.kind).toBe('heard');
  });

  it('shows nothing that the analysis finishes after "Stop"', async () => {
    const { fake, model } = await listening();
    await model.stop();
    fake.hear(strikeSample());
    expect(model.phase.value.kind).toBe('idle');
    expect(model.isBusy.value).toBe(false);
  });

  it('closes the microphone when the analysis dies, and says so', async () => {
    const { fake, model } = await listening();
    fake.earIs({ kind: 'failed', detail: 'crashed' });
    expect(model.microphone.value.kind).toBe('idle');
    expect(model.ear.value.kind).toBe('failed');
  });

  it('listens again although the old microphone reports its end late', async () => {
    const { fake, model } = await listening();
    await model.listen();
    fake.microphoneIs({ kind: 'idle' });
    fake.microphoneIs(openMicrophone);
    fake.hear(strikeSample());
    expect(model.phase.value.kind).toBe('heard');
  });

  it('reads the note an octave higher after one tap, and tells the ear to expect it there', async () => {
    const { fake, model } = await listening();
    fake.hear(strikeSample({ note: 74 }));
    model.correctOctave(1);
    expect(fake.contexts.at(-1)?.expected).toBe(86);
    expect(model.expected.value).toBe(86);
    expect(model.phase.value).toMatchObject({ kind: 'heard', reading: { note: 86 } });
  });

  it('offers no octave beyond the notes that pans have, and none while no note is known', async () => {
    const { fake, model } = await listening();
    expect(model.octaves.value).toEqual({ up: null, down: null });
    fake.hear(strikeSample({ note: 88 }));
    expect(model.octaves.value).toEqual({ up: null, down: 76 });
    model.correctOctave(1);
    expect(model.expected.value).toBeNull();
  });

  it('tells the ear the expected note and the band pitch', async () => {
    const { fake, model } = await listening();
    model.expect(midiNote(60));
    fake.a4.value = hertz(442);
    model.retune();
    expect(fake.contexts.at(-1)).toMatchObject({ a4: 442, expected: 60, notes: null });
  });
});

describe('a sound file', () => {
  it('goes to the ear at its own rate, in blocks, and settled strikes are counted once', async () => {
    const fake = fakePorts();
    const model = createListenModel(fake.ports);
    fake.file.result = {
      kind: 'opened',
      sound: { samples: new Float32Array(10_000), sampleRate: 44_100, resampled: false },
    };
    fake.file.during = [strikeSample({ event: 1, provisional: true }), strikeSample({ event: 1 })];
    await model.openFile(anyFile);
    expect(fake.rates).toEqual([44_100]);
    expect(fake.fed).toEqual([4096, 4096, 1808]);
    expect(model.fileNotice.value).toEqual({ kind: 'read', heard: 1, resampled: false });
    expect(model.phase.value.kind).toBe('heard');
    expect(model.isBusy.value).toBe(false);
  });

  it('without a strike leaves nothing that asks for one', async () => {
    const fake = fakePorts();
    const model = createListenModel(fake.ports);
    fake.file.result = {
      kind: 'opened',
      sound: { samples: new Float32Array(100), sampleRate: 48_000, resampled: true },
    };
    await model.openFile(anyFile);
    expect(model.phase.value.kind).toBe('idle');
    expect(model.fileNotice.value).toEqual({ kind: 'read', heard: 0, resampled: true });
  });

  it('that is no sound is named as such', async () => {
    const model = createListenModel(fakePorts().ports);
    await model.openFile(anyFile);
    expect(model.fileNotice.value).toEqual({ kind: 'unreadable', why: 'not-sound' });
  });

  it('that is left while it opens is not analysed any more', async () => {
    const fake = fakePorts();
    const model = createListenModel(fake.ports);
    fake.file.result = {
      kind: 'opened',
      sound: { samples: new Float32Array(100), sampleRate: 48_000, resampled: false },
    };
    const opening = model.openFile(anyFile);
    await model.stop();
    await opening;
    expect(fake.fed).toEqual([]);
    expect(model.isBusy.value).toBe(false);
  });
});

describe('the practice pan', () => {
  const source = { layout: lowCLead, strike: () => new Float32Array(5000) };

  it('is heard through the same ear, which knows its notes', async () => {
    const fake = fakePorts();
    const model = createListenModel(fake.ports);
    await model.beginPractice(source);
    expect(fake.contexts.at(-1)?.notes).toHaveLength(29);
    model.strikePractice(source, midiNote(74));
    expect(fake.fed).toEqual([4096, 904]);
    expect(model.isBusy.value).toBe(true);
    await model.stop();
    expect(model.isBusy.value).toBe(false);
  });

  it('does not refuse the next note that is tapped because another one was named before', async () => {
    const fake = fakePorts();
    const model = createListenModel(fake.ports);
    await model.beginPractice(source);
    model.expect(midiNote(74));
    model.strikePractice(source, midiNote(74));
    expect(fake.contexts.at(-1)?.expected).toBe(74);
    model.strikePractice(source, midiNote(76));
    expect(fake.contexts.at(-1)?.expected).toBeNull();
    expect(model.expected.value).toBeNull();
  });

  it('that is left before it is ready leaves nothing behind', async () => {
    const fake = fakePorts();
    const model = createListenModel(fake.ports);
    const beginning = model.beginPractice(source);
    await model.stop();
    await beginning;
    expect(model.isBusy.value).toBe(false);
    expect(fake.rates).toEqual([]);
  });
});
