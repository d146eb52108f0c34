// What the ear makes of the partials as they were last measured.
import { describe, expect, it } from 'vitest';
import type { KnownNote, ListeningContext, Strike } from '../../src/domain/measurement/strike';
import { ownOctaves } from '../../src/domain/reading/own-octave';
import { addStrike } from '../../src/domain/reading/reading';
import { centsBetween, decibels, hertz, midiNote } from '../../src/domain/tuning/units';
import { ringingLines } from '../../src/dsp/note/ringing-lines';
import { between, seededRandom } from '../../src/practice-pan/seeded-random';
import { addStruckNote } from '../../src/practice-pan/struck-note';
import { guidedTo, hearScene, panNotes, panOnly } from '../ear-scenes/hear-scene';
import { pinkNoise } from '../sounds/noise';
import { type Scene, strikeScene } from '../sounds/scene';
import { finallyHeard } from './listen-to';

const sampleRate = 44100;
const equal = (note: number): number => 440 * 2 ** ((note - 69) / 12);
const shifted = (hz: number, by: number): number => hz * 2 ** (by / 1200);

const known = (note: number, fundamentalHz: number, octaveHz: number | null): KnownNote => ({
  note: midiNote(note),
  fundamentalHz: hertz(fundamentalHz),
  octaveHz: octaveHz === null ? null : hertz(octaveHz),
});

/** A pan whose notes are up to 80 cents off, neighbours never closer than 35 cents; and one strike of each. */
function badPan(seed: number): readonly KnownNote[] {
  const random = seededRandom(seed);
  let last = 0;
  return panNotes.map((note) => {
    let fundamental = shifted(equal(note), between(random, -80, 80));
    while (last > 0 && centsBetween(last, fundamental) < 35) {
      fundamental = shifted(equal(note), between(random, -80, 80));
    }
    last = fundamental;
    return known(note, fundamental, shifted(2 * fundamental, between(random, -15, 15)));
  });
}

function struckOf({ fundamentalHz, octaveHz }: KnownNote, seed: number): Float32Array {
  const random = seededRandom(seed);
  const samples = pinkNoise(random, sampleRate, 1.4).map((value) => 1e-3 * value);
  const partial = (hz: number, amplitude: number, bloomSeconds: number) => ({
    hz,
    amplitude,
    bloomSeconds,
    decaySeconds: 0.25,
    glideCents: 10,
    glideSeconds: 0.04,
    phase: 2 * Math.PI * random(),
  });
  const partials = [partial(fundamentalHz, 1, 0.001), partial(octaveHz ?? 0, 0.5, 0.025)];
  addStruckNote(samples, sampleRate, 0.3, { partials, onset: 0.002 }, 0.2);
  return samples;
}

const namesHeard = (pan: readonly KnownNote[], context: ListeningContext): readonly boolean[] =>
  pan.map((note, n) => {
    const heard = finallyHeard(struckOf(note, 100 + n), sampleRate, context);
    return heard.some((each) => each.kind === 'strike' && each.note === note.note);
  });

describe('the note on a pan that is up to 80 cents off', () => {
  const pan = badPan(1);

  it('is found by the partials as last measured, and often not by equal temperament', () => {
    const right = namesHeard(pan, { ...panOnly, known: pan }).filter(Boolean).length;
    const without = namesHeard(pan, panOnly).filter(Boolean).length;
    expect(right).toBe(pan.length);
    expect(without).toBeLessThan(0.9 * pan.length);
  });

  it('is refused by its name when another one is expected, however near to that it is', () => {
    const c4 = known(60, shifted(equal(60), 80), 2 * shifted(equal(60), 80));
    const cSharp4 = known(61, shifted(equal(61), 25), 2 * shifted(equal(61), 25));
    const context = { ...guidedTo(61), known: [c4, cSharp4] };
    expect(finallyHeard(struckOf(c4, 1), sampleRate, context)[0]).toMatchObject({
      reason: 'wrong-note',
      note: 60,
    });
    expect(finallyHeard(struckOf(cSharp4, 1), sampleRate, context)[0]).toMatchObject({
      kind: 'strike',
      note: 61,
    });
  });

  it('is the expected one where that has moved since it was measured', () => {
    const before = known(62, shifted(equal(62), -70), 2 * shifted(equal(62), -70));
    const now = known(62, equal(62), 2 * equal(62));
    const context = { ...guidedTo(62), known: [before] };
    expect(finallyHeard(struckOf(now, 1), sampleRate, context)[0]).toMatchObject({
      kind: 'strike',
      note: 62,
    });
  });
});

const pairScenes = Array.from({ length: 16 }, (_, n) => strikeScene(1001 + n, { pair: true }));

/** The pair's lines as measured a while ago: a cent or so off. */
function knownPair({ truth }: Scene, seed: number): readonly KnownNote[] {
  const random = seededRandom(seed);
  const aged = (hz: number): number => shifted(hz, between(random, -1.5, 1.5));
  const { note, fundamental, octave, pairHz } = truth;
  return [
    known(note, aged(fundamental.hz), aged(octave.hz)),
    known(note + 12, aged(pairHz ?? 0), null),
  ];
}

function pairHeard(known: (scene: Scene, seed: number) => readonly KnownNote[]) {
  return pairScenes.flatMap((scene, seed) => {
    const { truth } = scene;
    const heard = hearScene(scene, { ...guidedTo(truth.note), known: known(scene, seed) });
    if (heard?.kind !== 'strike' || !heard.octave || !heard.octaveRival) return [];
    const isOwn = Math.abs(centsBetween(truth.octave.hz, heard.octave.hz)) < 1;
    return [{ isOwn, heard, scene }];
  });
}

describe('two lines at the octave, 9 to 18 cents apart', () => {
  const all = pairHeard(knownPair);

  it('are told apart by the partials as last measured', () => {
    expect(all.length).toBeGreaterThan(8);
    // The target is none.
    expect(all.filter(({ isOwn }) => !isOwn).length).toBeLessThanOrEqual(4);
  });

  it('are told apart by the one of them that was measured', () => {
    const onlyOwn = pairHeard((scene, seed) => knownPair(scene, seed).slice(0, 1));
    const onlyPartner = pairHeard((scene, seed) => knownPair(scene, seed).slice(1));
    expect([...onlyOwn, ...onlyPartner].filter(({ isOwn }) => !isOwn)).toEqual([]);
  });

  it('are not told apart without: the stronger one is as often the partner’s', () => {
    expect(pairHeard(() => []).some(({ isOwn }) => !isOwn)).toBe(true);
  });

  it('are settled by a strike with the partner damped', () => {
    let settled = 0;
    for (const { scene, heard } of pairHeard(() => [])) {
      const { note, octave } = scene.truth;
      const seed = 1001 + pairScenes.indexOf(scene);
      const damped = hearScene(strikeScene(seed, { pair: false }), guidedTo(note));
      if (damped?.kind !== 'strike') continue;
      if (damped.octaveRival) continue;
      const second: Strike = { ...damped, event: heard.event + 1 };
      const own = ownOctaves([heard, second]);
      expect(own.isOpen).toBe(false);
      for (const strike of own.strikes) {
        expect(Math.abs(centsBetween(octave.hz, strike.octave?.hz ?? 0))).toBeLessThan(1);
      }
      const { reading } = addStrike(addStrike(null, heard).reading, second);
      expect(reading.octaveRival).toBeNull();
      settled++;
    }
    expect(settled).toBeGreaterThan(8);
  });
});

describe('a ring partner', () => {
  const line = (hz: number, db: number) => ({ hz, amplitude: 10 ** (db / 20), overNoiseDb: 20 });
  const originsOf = (hz: readonly number[], context: ListeningContext) =>
    ringingLines(
      hz.map((each, n) => line(each, -20 - n)),
      [],
      equal(67),
      context,
    ).map(({ note, partial }) => [note, partial]);

  it('is the nearest partial that was measured', () => {
    const d5 = known(74, equal(74), shifted(2 * equal(74), -6));
    const d6 = known(86, shifted(equal(86), 6), null);
    const context = { ...panOnly, known: [d5, d6] };
    const seen = [shifted(equal(86), 4), shifted(equal(86), -5)];
    expect(originsOf(seen, context)).toEqual([
      [86, 1],
      [74, 2],
    ]);
  });

  it('is by its place a fundamental of the pan before it is a partial of a lower note', () => {
    expect(originsOf([equal(74), equal(86)], panOnly)).toEqual([
      [74, 1],
      [86, 1],
    ]);
  });

  it('is a partial of a lower note only where that note sounds', () => {
    // F#6 is no note of this pan; it can be the octave of F#5 or the twelfth of B4.
    const fSharp6 = equal(90);
    expect(originsOf([fSharp6], panOnly)).toEqual([[null, null]]);
    expect(originsOf([equal(78), fSharp6], panOnly)).toEqual([
      [78, 1],
      [78, 2],
    ]);
    expect(originsOf([fSharp6, equal(71)], panOnly)[0]).toEqual([90 - 19, 3]);
  });

  it('that has moved since it was measured is still named', () => {
    const context = { ...panOnly, known: [known(74, shifted(equal(74), -40), null)] };
    expect(originsOf([equal(74)], context)).toEqual([[74, 1]]);
  });

  it('is named right in scenes with six of them, in level order', () => {
    let named = 0;
    for (let seed = 5001; seed < 5013; seed++) {
      const scene = strikeScene(seed, { snrDb: 30 });
      const { note, ringing } = scene.truth;
      const partners = ringing.map((each) => known(each.note, each.hz, null));
      for (const known of [[], partners]) {
        const heard = hearScene(scene, { ...guidedTo(note), known });
        if (heard?.kind !== 'strike') continue;
        for (const each of heard.alsoRinging) {
          const truth = ringing.find(({ hz }) => Math.abs(centsBetween(hz, each.hz)) < 5);
          if (!truth) continue;
          named++;
          expect([each.note, each.partial]).toEqual([truth.note, 1]);
          expect(each.levelDb).toBeLessThan(decibels(0));
        }
      }
    }
    expect(named).toBeGreaterThan(40);
  });
});
