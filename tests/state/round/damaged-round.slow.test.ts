// The round of a knock check on damaged pans, from sound to signs: what it keeps gives the signs that the benchmark of
// the ear counts, because both count refused blows in the same way.
import { signal } from '@preact/signals';
import { describe, expect, it } from 'vitest';
import { panDamageSigns } from '../../../src/domain/knock-check/pan-damage-signs';
import { lowCLead } from '../../../src/domain/pans/layouts/low-c-lead';
import { strikesOf } from '../../../src/domain/reading/reading-values';
import { panId, type RefusedBlows } from '../../../src/domain/records/rack-records';
import { strikeRecordOf } from '../../../src/domain/records/strike-record';
import { refusedInRound } from '../../../src/domain/rounds/refused-in-round';
import { cents, hertz, instant, midiNote, seconds } from '../../../src/domain/tuning/units';
import { createRecordTurns } from '../../../src/state/keeping/record-turns';
import { createListenModel } from '../../../src/state/listening/listen-model';
import { createRoundModel } from '../../../src/state/round/round-model';
import { panFieldsSample } from '../../domain/records/pan-fields-sample';
import { finallyHeard } from '../../dsp/listen-to';
import { strikeDamagedPan } from '../../ear-scenes/strike-damaged-pan';
import { type DamagedPan, damagedPan } from '../../sounds/damaged-pan';
import { fakePorts } from '../fake-ports';
import { memoryPanStore } from '../memory-pan-store';

const settle = () => new Promise((done) => setTimeout(done, 0));
/** As patient as the person of the benchmark. */
const mostMisses = 7;

/** The whole round through the models of the app, each note struck until the round has it or it is given up. */
async function roundOn(damaged: DamagedPan) {
  const fake = fakePorts();
  const memory = memoryPanStore();
  const listen = createListenModel(fake.ports);
  let named = 0;
  const model = createRoundModel({
    store: memory.store,
    listen,
    settings: {
      a4: signal(hertz(440)),
      announcement: signal('nothing'),
      keepsSound: signal(false),
    },
    announcer: {
      hasVoice: () => true,
      say: async () => undefined,
      beep: async () => undefined,
      hush: () => undefined,
    },
    clock: { now: () => instant(1000 + named) },
    identities: { next: () => `id-${++named}` },
    turns: createRecordTurns(),
    undo: { propose: () => undefined },
    appVersion: 'test',
    newsWords: ({ kind }) => kind,
  });
  const order = damaged.notes.map(({ note }) => midiNote(note));
  const round = model.begin({
    pan: panId('pan'),
    fields: { ...panFieldsSample(), layout: lowCLead },
    way: 'guided',
    conditions: { temperature: null, standing: 'settled' },
    order,
    mayBeChoked: true,
    earlier: [],
  });
  await settle();
  fake.microphoneIs({ kind: 'listening', processing: [], sampleRate: damaged.sampleRate });
  let blow = 0;
  for (const truth of damaged.notes) {
    let misses = 0;
    for (let n = 0; listen.expected.value === truth.note && misses < mostMisses; n++) {
      const [context] = fake.contexts.slice(-1);
      const sound = truth.strike(n, 'now');
      // The ear of the benchmark has not heard the notes before.
      const heard = finallyHeard(sound, damaged.sampleRate, context && { ...context, known: [] });
      blow++;
      for (const [k, each] of heard.entries()) {
        fake.hear({ ...each, event: 100 * blow + k, at: seconds(2 * blow + each.at) });
      }
      if (!heard.some(({ kind }) => kind === 'strike')) misses++;
      await settle();
    }
    if (misses === mostMisses) model.mark('buzzing');
    await settle();
  }
  const readings = memory.ofKind('reading');
  return { readings, refused: refusedInRound(round, readings, memory.ofKind('mark')) };
}

describe.each([30_163])('the round of a knock check on damaged pan %i', (seed) => {
  it('keeps the strikes and counts the refused blows that the benchmark counts', async () => {
    const damaged = damagedPan(seed);
    const { readings, refused } = await roundOn(damaged);
    const expected = strikeDamagedPan(damaged);
    const none: RefusedBlows | null = null;
    for (const { note, strikes, refused: counted } of expected) {
      const kept = readings.filter((reading) => reading.note === note).at(-1)?.strikes ?? [];
      expect(kept).toEqual(strikes.map(strikeRecordOf));
      expect(refused.get(note) ?? none).toEqual(counted);
    }
    const rattling = expected.find(({ truth }) => truth.damage === 'rattling');
    const signs = panDamageSigns({
      layout: lowCLead,
      strikes: new Map(
        readings.map((reading) => [
          reading.note,
          strikesOf(reading, { a4: hertz(440), offset: cents(0) }),
        ]),
      ),
      refused,
    });
    const kinds = rattling && signs.get(rattling.note)?.map(({ kind }) => kind);
    expect(kinds).toContain('buzzing');
  });
});
