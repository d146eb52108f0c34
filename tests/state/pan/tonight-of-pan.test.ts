import { describe, expect, it } from 'vitest';
import { noNeeds } from '../../../src/domain/knock-check/saved-tunes';
import { usualTonightRules } from '../../../src/domain/knock-check/tonight-rules';
import {
  type KnockCheck,
  type RackRecord,
  type ReadingRecord,
  type RoundId,
  roundOf,
} from '../../../src/domain/records/rack-records';
import { currentPan } from '../../../src/domain/records/standing/current-pan';
import { newestFinishedRounds } from '../../../src/domain/rounds/finished-rounds';
import { resultNow } from '../../../src/domain/rounds/pan-now';
import { defaultSettings } from '../../../src/domain/settings/settings';
import { instant } from '../../../src/domain/tuning/units';
import { panAtAGlance } from '../../../src/state/pan/pan-at-a-glance';
import type { OpenPan } from '../../../src/state/pan/pan-model';
import { signsOfPan, tonightOfPan, tonightRounds } from '../../../src/state/pan/tonight-of-pan';
import { panWith, type RoundSketch } from '../../browser/seeded-pans';
import { benchReading } from '../../domain/rounds/bench-sample';
import { day, firstDay, startSample } from '../../domain/rounds/round-sample';
import { sampleKnockCheck, sampleStopgap } from '../../storage/rack/rack-sample';
import { memoryPanStore } from '../memory-pan-store';

/** Half an hour before the round of that day. */
const checkOn = (days: number, more: Partial<KnockCheck> = {}): KnockCheck => ({
  ...sampleKnockCheck('check-1'),
  at: instant(firstDay + days * day - 1800_000),
  ...more,
});

async function opened(sketches: readonly RoundSketch[], more: readonly RackRecord[] = []) {
  const records = [...panWith({}, sketches), ...more];
  const memory = memoryPanStore();
  await memory.store.keep(records);
  const [first] = records;
  const loaded = first && (await memory.store.pan(first.pan));
  if (loaded?.kind !== 'loaded') throw new Error('no pan');
  const { value } = loaded;
  const rounds = newestFinishedRounds(value, Number.POSITIVE_INFINITY);
  const readings = new Map<RoundId, readonly ReadingRecord[]>(
    rounds.map((start) => [
      roundOf(start),
      memory.ofKind('reading').filter(({ round }) => round === roundOf(start)),
    ]),
  );
  const [newest] = rounds;
  const pan: OpenPan = {
    id: value.pan,
    records: value,
    current: currentPan(value),
    rounds,
    openRound: null,
    readings: (newest && readings.get(roundOf(newest))) ?? [],
    base: newest ?? null,
    sinceBase: (newest && readings.get(roundOf(newest))) ?? [],
    outside: memory.ofKind('reading').filter(({ round }) => round === null),
    photo: null,
  };
  return { pan, readings };
}

const settings = {
  needs: noNeeds,
  tunes: [],
  rules: usualTonightRules,
};

async function tonight(rounds: readonly RoundSketch[], more: readonly RackRecord[] = []) {
  const { pan, readings } = await opened(rounds, more);
  const found = tonightRounds(pan);
  const glance = panAtAGlance(pan, defaultSettings);
  const { highestWithPartials } = defaultSettings.limits;
  const signs = signsOfPan(pan, found, readings, glance.counting, highestWithPartials);
  return { ...tonightOfPan(pan, found.check, resultNow(glance), signs, settings), signs };
}

describe('the rounds that tonight is judged by', () => {
  it('are the newest one, and the newest full one before the pan was knocked', async () => {
    const rounds: readonly RoundSketch[] = [
      { day: 1 },
      { day: 2, way: 'quick' },
      { day: 5 },
      { day: 6 },
    ];
    const { pan } = await opened(rounds, [checkOn(5)]);
    const { now, before, check } = tonightRounds(pan);
    expect([now?.id, before?.id, check?.id]).toEqual(['round-6', 'round-1', 'check-1']);
  });

  it('are the last two where the pan was not knocked since', async () => {
    const { pan } = await opened([{ day: 1 }, { day: 3 }, { day: 5 }], [checkOn(2)]);
    const { now, before } = tonightRounds(pan);
    expect([now?.id, before?.id]).toEqual(['round-5', 'round-1']);
    const { pan: never } = await opened([{ day: 1 }, { day: 3 }, { day: 5 }]);
    expect(tonightRounds(never).before?.id).toBe('round-3');
  });

  it('are none where nothing was struck', async () => {
    const { pan } = await opened([]);
    expect(tonightRounds(pan)).toEqual({ check: null, now: null, before: null });
  });
});

describe('tonight, for an open pan', () => {
  it('leaves out a note that lies far off, one that lost its ring and one that walks', async () => {
    const { verdict, signs } = await tonight(
      [
        { day: 1 },
        {
          day: 5,
          shift: -4,
          off: {
            62: { fundamental: -35 },
            72: { strikes: [0, -3, -6, -9, -12] },
          },
        },
      ],
      [checkOn(5)],
    );
    expect(verdict).toEqual({ kind: 'play-without', notes: [62, 72] });
    expect(signs.get(72 as never)?.map(({ kind }) => kind)).toContain('walking');
  });

  it('plays notes that were put right on the bench since the round, whatever they showed in it', async () => {
    const round = {
      day: 5,
      off: { 62: { fundamental: -31 }, 72: { strikes: [0, -3, -6, -9, -12] } },
    };
    const start = startSample(round);
    const mended = [62, 72].map((note) =>
      benchReading(start, { note, fundamental: -2, third: 0 }, 200),
    );
    const before = await tonight([{ day: 1 }, round], [checkOn(5)]);
    expect(before.verdict).toEqual({ kind: 'play-without', notes: [62, 72] });
    const after = await tonight([{ day: 1 }, round], [checkOn(5), ...mended]);
    expect(after.verdict).toEqual({ kind: 'play' });
    expect(after.signs.size).toBe(0);
  });

  it('does not take a note for put right that was measured before the pan was knocked', async () => {
    const mended = benchReading(startSample({ day: 1 }), { note: 62, fundamental: -2 }, 200);
    const { verdict } = await tonight([{ day: 1 }], [mended, checkOn(3)]);
    expect(verdict).toEqual({ kind: 'strike-first' });
  });

  it('leaves out a note whose blows were heard as several each, though its strikes show nothing', async () => {
    const { pan, readings } = await opened([{ day: 1 }, { day: 5 }], [checkOn(5)]);
    const found = tonightRounds(pan);
    const rattling = new Map(
      [...readings].map(([round, all]) => [
        round,
        all.map((reading) =>
          reading.note === 74 && round === (found.now && roundOf(found.now))
            ? { ...reading, refused: { knocks: 0, heardAsSeveral: 4 } }
            : reading,
        ),
      ]),
    );
    const { highestWithPartials } = defaultSettings.limits;
    expect(signsOfPan(pan, found, readings, [], highestWithPartials).size).toBe(0);
    const signs = signsOfPan(pan, found, rattling, [], highestWithPartials);
    expect([...signs]).toMatchObject([[74, [{ kind: 'buzzing', heardAsSeveral: 4 }]]]);
  });

  it('does not play a pan on which a note is marked as cracked, though no round is kept', async () => {
    const { pan } = await opened([]);
    const marks = panWith({}, [], { 60: 'cracked' }).filter(({ kind }) => kind === 'mark');
    const cracked: OpenPan = {
      ...pan,
      records: { ...pan.records, marks: marks as unknown as OpenPan['records']['marks'] },
    };
    const found = tonightOfPan(cracked, null, null, new Map(), settings);
    expect(found.verdict).toEqual({ kind: 'do-not-play' });
  });

  it('knows the magnets that are on the pan', async () => {
    const { magnets } = await tonight([{ day: 1 }], [sampleStopgap('stopgap-1', 72)]);
    expect([...magnets.keys()]).toEqual([72]);
  });
});
