import { afterEach, describe, expect, it } from 'vitest';
import { AnalysisSession } from '../../../src/analysis/session/analysis-session';
import type { FromEarWorker } from '../../../src/analysis/session/protocol';
import type { SoundBlock } from '../../../src/domain/measurement/sound-block';
import { hertz, midiNote, seconds } from '../../../src/domain/tuning/units';
import { leadNote, placed } from '../../synthetic-sounds/sounds';

const sampleRate = 48_000;
const d5 = leadNote(
  { target: 440 * 2 ** (5 / 12), fundamental: -9, octave: -5, third: 2, thirdTimes: 4 },
  sampleRate,
);
const strike = (): Float32Array<ArrayBuffer> =>
  Float32Array.from(placed([{ at: 0.5, samples: d5 }], { sampleRate, seconds: 2 }));

function opened() {
  const posted: FromEarWorker[] = [];
  const session = new AnalysisSession((message) => posted.push(message));
  const heard = () => posted.flatMap((each) => (each.type === 'heard' ? [each.heard] : []));
  return { session, posted, heard };
}

const ports: MessagePort[] = [];
afterEach(() => {
  for (const port of ports.splice(0)) port.close();
});
const nextMessage = (port: MessagePort): Promise<unknown> =>
  new Promise((resolve) => {
    port.onmessage = ({ data }) => resolve(data);
  });
function attached(session: AnalysisSession): MessagePort {
  const { port1, port2 } = new MessageChannel();
  ports.push(port1, port2);
  session.handle({ type: 'port', port: port2, sampleRate });
  return port1;
}

describe('the analysis', () => {
  it('answers a greeting', () => {
    const { session, posted } = opened();
    session.handle({ type: 'hello' });
    expect(posted).toEqual([{ type: 'hello' }]);
  });

  it('reports a strike in samples that are fed, and then that it has finished', () => {
    const { session, posted, heard } = opened();
    session.handle({ type: 'begin', sampleRate });
    session.handle({ type: 'samples', samples: strike() });
    session.handle({ type: 'finish', ticket: 7 });
    expect(heard().at(-1)).toMatchObject({ kind: 'strike', provisional: false, note: 74 });
    expect(posted.at(-1)).toEqual({ type: 'finished', ticket: 7 });
  });

  it('sends a stretch of sound once it has been heard to its end, and none of an earlier listening', () => {
    const { session, posted } = opened();
    const cuts = () => posted.flatMap((each) => (each.type === 'cut' ? [each] : []));
    session.handle({ type: 'begin', sampleRate: 8000 });
    session.handle({ type: 'cut', ticket: 1, from: seconds(0.5), length: seconds(1) });
    session.handle({ type: 'samples', samples: new Float32Array(8000).fill(0.25) });
    expect(cuts()).toEqual([]);
    session.handle({ type: 'samples', samples: new Float32Array(8000).fill(0.5) });
    expect(cuts()).toMatchObject([{ ticket: 1, sound: { sampleRate: 8000 } }]);
    expect(cuts()[0]?.sound?.samples.length).toBe(8000);
    expect(cuts()[0]?.sound?.samples[0]).toBe(0.25);
    expect(cuts()[0]?.sound?.samples.at(-1)).toBe(0.5);
    session.handle({ type: 'cut', ticket: 2, from: seconds(1.9), length: seconds(1) });
    session.handle({ type: 'begin', sampleRate: 8000 });
    expect(cuts().at(-1)).toEqual({ type: 'cut', ticket: 2, sound: null });
    session.handle({ type: 'samples', samples: new Float32Array(4000) });
    session.handle({ type: 'cut', ticket: 3, from: seconds(0.25), length: seconds(1) });
    session.handle({ type: 'finish', ticket: 4 });
    expect(cuts().at(-1)?.sound?.samples.length).toBe(2000);
  });

  it('judges by what it was told before and during the listening', () => {
    const { session, heard } = opened();
    const context = { a4: hertz(440), expected: midiNote(60), notes: null };
    session.handle({ type: 'context', context });
    session.handle({ type: 'begin', sampleRate });
    session.handle({ type: 'samples', samples: strike() });
    expect(heard().at(-1)).toMatchObject({ kind: 'refused', reason: 'wrong-note' });
    session.handle({ type: 'context', context: { ...context, expected: midiNote(74) } });
    session.handle({ type: 'samples', samples: strike() });
    expect(heard().at(-1)).toMatchObject({ kind: 'strike', note: 74 });
  });

  it('says that it has finished also when it never began', () => {
    const { session, posted } = opened();
    session.handle({ type: 'samples', samples: new Float32Array(10) });
    session.handle({ type: 'finish', ticket: 1 });
    expect(posted).toEqual([{ type: 'finished', ticket: 1 }]);
  });

  it('reads blocks from a port, tells their level, and sends their memory back', async () => {
    const { session, posted, heard } = opened();
    const port = attached(session);
    const samples = strike();
    const back = nextMessage(port);
    port.postMessage({ samples, peak: 0.1 } satisfies SoundBlock, [samples.buffer]);
    const returned = await back;
    expect(returned).toBeInstanceOf(Float32Array);
    expect((returned as Float32Array).length).toBe(2 * sampleRate);
    expect(heard().at(-1)).toMatchObject({ kind: 'strike', note: 74 });
    const level = posted.find((each) => each.type === 'level');
    expect(level?.type === 'level' && level.levelDb).toBeCloseTo(-20, 6);
  });

  it('gives digital silence a level that is a number', async () => {
    const { session, posted } = opened();
    const port = attached(session);
    const back = nextMessage(port);
    port.postMessage({ samples: new Float32Array(2048), peak: 0 } satisfies SoundBlock);
    await back;
    const level = posted.find((each) => each.type === 'level');
    expect(level?.type === 'level' && Number.isFinite(level.levelDb)).toBe(true);
  });

  it('forgets the microphone when another listening begins', async () => {
    const { session, posted } = opened();
    const old = attached(session);
    old.postMessage({ samples: new Float32Array(2048), peak: 0.5 } satisfies SoundBlock);
    session.handle({ type: 'begin', sampleRate });
    const port = attached(session);
    const back = nextMessage(port);
    port.postMessage({ samples: new Float32Array(2048), peak: 0.1 } satisfies SoundBlock);
    await back;
    expect(posted.filter((each) => each.type === 'level').length).toBe(1);
  });
});
