import { describe, expect, it } from 'vitest';
import { evidenceOf } from '../../../src/domain/knock-check/damage-evidence';
import { damageSigns } from '../../../src/domain/knock-check/damage-signs';
import { comparisonNotes, panDamageSigns } from '../../../src/domain/knock-check/pan-damage-signs';
import type { Strike } from '../../../src/domain/measurement/strike';
import { notesOf } from '../../../src/domain/pans/layout';
import { lowCLead } from '../../../src/domain/pans/layouts/low-c-lead';
import { cents, decibels, hertz, midiNote, seconds } from '../../../src/domain/tuning/units';
import { type StrikeSketch, strikeSample } from '../reading/strike-sample';

const d5 = midiNote(74);

interface Damage extends StrikeSketch {
  readonly decay?: number;
  readonly octaveDb?: number;
  readonly buzz?: number;
}

/** A strike whose partials lie at −20 dB unless told otherwise. */
function struck({ decay, octaveDb, buzz, ...sketch }: Damage = {}): Strike {
  const strike = strikeSample(sketch);
  const { fundamental, octave } = strike;
  return {
    ...strike,
    fundamental: { ...fundamental, decaySeconds: seconds(decay ?? 0.3) },
    octave: octave && { ...octave, levelDb: decibels(octaveDb ?? -20) },
    ...(buzz === undefined ? {} : { buzzDb: decibels(buzz) }),
  };
}

const three = (damage: Damage = {}): readonly Strike[] =>
  [1, 2, 3].map((event) => struck({ event, ...damage }));
const neighbours = [three(), three(), three()];
const kindsOf = (...args: Parameters<typeof evidenceOf>) =>
  damageSigns(evidenceOf(...args)).map(({ kind }) => kind);

describe('signs of damage', () => {
  it('are none for a note that rings like its neighbours, with or without a record from before', () => {
    expect(kindsOf(d5, three(), { neighbours })).toEqual([]);
    expect(kindsOf(d5, three(), { neighbours, before: three(), third: 'twelfth' })).toEqual([]);
  });

  it('are none for a note that nobody has struck', () => {
    expect(kindsOf(d5, [], { neighbours, before: three() })).toEqual([]);
  });

  it('do not come from first looks', () => {
    const before = three();
    const looks = three({ provisional: true, octave: null, decay: 0.05 });
    expect(kindsOf(d5, looks, { neighbours, before })).toEqual([]);
  });
});

describe('a missing partial', () => {
  it('is a sign where the neighbours have theirs, with the count behind it', () => {
    const [sign] = damageSigns(evidenceOf(d5, three({ octave: null }), { neighbours }));
    expect(sign).toEqual({
      kind: 'no-octave',
      missingIn: 3,
      strikes: 3,
      neighboursWith: 3,
      neighbours: 3,
      wasThere: null,
    });
  });

  it('is no sign where the neighbours have none either, or too few were struck to know', () => {
    const without = three({ octave: null });
    expect(kindsOf(d5, without, { neighbours: [without, without, three()] })).toEqual([]);
    expect(kindsOf(d5, without, { neighbours: [three()] })).toEqual([]);
  });

  it('is judged by the last record first', () => {
    const without = three({ octave: null });
    expect(kindsOf(d5, without, { neighbours, before: without })).toEqual([]);
    expect(kindsOf(d5, without, { before: three() })).toEqual(['no-octave']);
  });

  it('is one that has fallen far below its level, even if a trace is left', () => {
    expect(kindsOf(d5, three({ octaveDb: -52 }), { neighbours })).toEqual(['no-octave']);
    expect(kindsOf(d5, three({ octaveDb: -39 }), { neighbours })).toEqual([]);
    const strong = three({ octaveDb: -12 });
    expect(kindsOf(d5, three({ octaveDb: -34 }), { before: strong })).toEqual(['no-octave']);
    expect(kindsOf(d5, three({ octaveDb: -34 }), { before: three() })).toEqual([]);
  });

  it('is not made by one bad strike of three', () => {
    const strikes = [struck(), struck({ event: 2, octave: null }), struck({ event: 3 })];
    expect(kindsOf(d5, strikes, { neighbours })).toEqual([]);
  });

  it('at the third is asked for only where the layout or the last record says the note has one', () => {
    const without = three({ third: null });
    expect(kindsOf(d5, without, { neighbours })).toEqual([]);
    expect(kindsOf(d5, without, { neighbours, third: 'none', before: three() })).toEqual([]);
    expect(kindsOf(d5, without, { neighbours, third: 'twelfth' })).toEqual(['no-third']);
    expect(kindsOf(d5, without, { neighbours, before: three() })).toEqual(['no-third']);
  });

  it('is not asked for above the highest note with partials', () => {
    const without = three({ octave: null, third: null });
    expect(kindsOf(midiNote(86), without, { neighbours, third: 'twelfth' })).toEqual([]);
  });
});

describe('a choked note', () => {
  it('rings less than half as long as its neighbours let expect', () => {
    const [sign] = damageSigns(evidenceOf(d5, three({ decay: 0.09 }), { neighbours }));
    expect(sign).toEqual({
      kind: 'choked',
      againstNeighbours: expect.closeTo(0.3, 9),
      againstBefore: null,
      knocks: 0,
    });
    expect(kindsOf(d5, three({ decay: 0.2 }), { neighbours })).toEqual([]);
  });

  it('is not one that was as short before', () => {
    const short = three({ decay: 0.1 });
    expect(kindsOf(d5, short, { neighbours, before: short })).toEqual([]);
    expect(kindsOf(d5, short, { neighbours, before: three() })).toEqual(['choked']);
  });

  it('is compared in turns, so that a high note may be short', () => {
    const low = three().map((strike) => ({
      ...strike,
      fundamental: { ...strike.fundamental, hz: hertz(587.33 / 4), decaySeconds: seconds(1.2) },
    }));
    expect(kindsOf(d5, three(), { neighbours: [low, low] })).toEqual([]);
  });

  it('may ring so shortly that the ear hears nothing but knocks', () => {
    expect(kindsOf(d5, [], { neighbours, knocks: 2 })).toEqual([]);
    expect(damageSigns(evidenceOf(d5, [], { neighbours, knocks: 3 }))).toEqual([
      { kind: 'choked', againstNeighbours: null, againstBefore: null, knocks: 3 },
    ]);
  });
});

describe('a buzz', () => {
  it('is noise of the strike that the neighbours have not', () => {
    const quiet = [three({ buzz: -40 }), three({ buzz: -44 })];
    expect(damageSigns(evidenceOf(d5, three({ buzz: -12 }), { neighbours: quiet }))).toEqual([
      { kind: 'buzzing', buzzDb: -12, overNeighboursDb: 30, heardAsSeveral: 0 },
    ]);
    expect(kindsOf(d5, three({ buzz: -38 }), { neighbours: quiet })).toEqual([]);
  });

  it('is none where all notes have as much of it, nor where it was not measured', () => {
    const noisy = [three({ buzz: -14 }), three({ buzz: -15 })];
    expect(kindsOf(d5, three({ buzz: -13 }), { neighbours: noisy })).toEqual([]);
    expect(kindsOf(d5, three(), { neighbours: noisy })).toEqual([]);
  });
});

describe('a rattle', () => {
  it('may be so loud that the ear hears several blows in each', () => {
    const [sign] = damageSigns(evidenceOf(d5, [], { neighbours, heardAsSeveral: 3 }));
    expect(sign).toMatchObject({ kind: 'buzzing', buzzDb: null, heardAsSeveral: 3 });
    expect(kindsOf(d5, three(), { neighbours, heardAsSeveral: 2 })).toEqual([]);
    const many = [...three(), struck({ event: 4 })];
    expect(kindsOf(d5, many, { neighbours, heardAsSeveral: 3 })).toEqual([]);
  });
});

describe('a walking note', () => {
  it('says how far it goes with each strike', () => {
    const strikes = [0, -5, -10.5, -15].map((fundamental, k) =>
      struck({ event: k + 1, fundamental }),
    );
    const [sign] = damageSigns(evidenceOf(d5, strikes, { neighbours }));
    expect(sign).toMatchObject({ kind: 'walking', strikes: 4 });
    expect(sign?.kind === 'walking' && sign.centsPerStrike).toBeCloseTo(-5.05, 6);
  });
});

describe('a new doublet', () => {
  const double = (octave: number, rival: number): readonly Strike[] =>
    three().map((strike) => {
      const line = (away: number) => ({
        ...strike.fundamental,
        hz: hertz(1174.66 * 2 ** (away / 1200)),
        centsFromOwn: cents(away),
      });
      const octaveRival = { ...line(rival), note: midiNote(86), beatHz: hertz(8) };
      return { ...strike, octave: line(octave), octaveRival };
    });

  it('is two lines at the octave where the last record had one', () => {
    const [sign] = damageSigns(evidenceOf(d5, double(-2, 10), { before: three() }));
    expect(sign).toMatchObject({ kind: 'new-doublet', beatHz: 8 });
    expect(sign?.kind === 'new-doublet' && sign.apart).toBeCloseTo(12, 9);
  });

  it('is not known to be new without a record, and is not new if it was there', () => {
    expect(kindsOf(d5, double(-2, 10))).toEqual([]);
    expect(kindsOf(d5, double(-2, 10), { before: double(-2, 10) })).toEqual([]);
    const mostly = [...double(-2, 10).slice(0, 2), struck({ event: 3 })];
    expect(kindsOf(d5, double(-2, 10), { before: mostly })).toEqual([]);
    const once = [struck(), struck({ event: 2 }), ...double(-2, 10).slice(2)];
    expect(kindsOf(d5, double(-2, 10), { before: once })).toEqual(['new-doublet']);
  });

  it('is not the octave partner, whose own pitch is known', () => {
    const partnerHz = hertz(1174.66 * 2 ** (11 / 1200));
    expect(kindsOf(d5, double(-2, 10), { before: three(), partnerHz })).toEqual([]);
    const elsewhere = hertz(1174.66 * 2 ** (25 / 1200));
    expect(kindsOf(d5, double(-2, 10), { before: three(), partnerHz: elsewhere })).toEqual([
      'new-doublet',
    ]);
  });
});

describe('the notes of a pan', () => {
  it('are compared with those around them and those near in pitch', () => {
    const around = comparisonNotes(lowCLead).get(d5) ?? [];
    expect(around).not.toContain(d5);
    expect(around).toEqual(expect.arrayContaining([midiNote(73), midiNote(75), midiNote(81)]));
    expect(around.length).toBeGreaterThanOrEqual(14);
  });

  it('show their signs, and those without a sign are left out', () => {
    const strikes = new Map(
      notesOf(lowCLead).map((note) => [note, three(note === d5 ? { decay: 0.08 } : {})] as const),
    );
    const signs = panDamageSigns({ layout: lowCLead, strikes });
    expect([...signs.keys()]).toEqual([d5]);
    expect(signs.get(d5)?.map(({ kind }) => kind)).toEqual(['choked']);
  });
});
