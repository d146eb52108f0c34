import { describe, expect, it } from 'vitest';
import type { PanFamily } from '../../../src/domain/pans/pan-family';
import type { PanCard } from '../../../src/domain/rack/pan-card';
import { blendOf, sectionsOf } from '../../../src/domain/rack/section-blend';
import { panId } from '../../../src/domain/records/rack-records';
import { cents, hertz } from '../../../src/domain/tuning/units';
import { sampleCard } from '../../storage/rack/rack-sample';
import { resultSample } from '../rounds/result-sample';

const card = (
  name: string,
  panPitch: number | null,
  family: PanFamily = 'lead',
  isRemoved = false,
): PanCard => ({
  ...sampleCard(panId(name)),
  name,
  family,
  isRemoved,
  panPitch: panPitch === null ? null : cents(panPitch),
});

describe('the sections of a rack', () => {
  it('are the pans of one kind whose pitch is known, the widest apart first', () => {
    const found = sectionsOf(
      [
        card('Low', -6),
        card('Cello', 1, 'cello'),
        card('Cello 2', 3, 'cello'),
        card('Silent', null),
        card('High', 5),
        card('Gone', 50, 'lead', true),
        card('Bass', 20, 'bass'),
      ],
      hertz(440),
    );
    expect(
      found.map(({ family, pans, apart }) => [family, pans.map((each) => each.card.name), apart]),
    ).toEqual([
      ['lead', ['High', 'Low'], 11],
      ['cello', ['Cello 2', 'Cello'], 2],
    ]);
  });
});

describe('a section with a pan that is tuned to another pitch', () => {
  it('is compared in one pitch: a pan true to A = 442 Hz lies 7.85 cents above one true to 440', () => {
    // 1200 log2(442 / 440) = 7.851 cents, by the definition of the cent (Ellis, 1885).
    const [found] = sectionsOf(
      [card('Ours', 0), { ...card('Theirs', 0), a4: hertz(442) }],
      hertz(440),
    );
    expect(found?.apart).toBeCloseTo(7.851, 3);
    expect(found?.pans.map((each) => each.card.name)).toEqual(['Theirs', 'Ours']);
  });
});

describe('the blend of two pans', () => {
  it('is in beats a second what the frequencies are apart: 5 cents at C4, C5 and C6', () => {
    // Worked by hand: 261.626, 523.251 and 1046.502 Hz (equal temperament, A4 = 440 Hz), times 2^(5/1200) − 1 =
    // 0.0028923: 0.757, 1.513 and 3.027 Hz. At C4 that is slower than a beat a second, so nobody hears it beat.
    const one = resultSample([60, 72, 84].map((note) => ({ note, fundamental: 0 })));
    const two = resultSample([60, 72, 84].map((note) => ({ note, fundamental: 5 })));
    const found = blendOf(one, two);
    expect(found.map(({ note }) => note)).toEqual([84, 72]);
    expect(found[0]?.beatHz).toBeCloseTo(3.027, 3);
    expect(found[1]?.beatHz).toBeCloseTo(1.513, 3);
    expect(found[0]?.cents).toBeCloseTo(5, 6);
  });

  it('is the same the other way round, with the sign turned', () => {
    const one = resultSample([{ note: 74, fundamental: -8 }]);
    const two = resultSample([{ note: 74, fundamental: 7 }]);
    const [there] = blendOf(one, two);
    const [back] = blendOf(two, one);
    expect(there?.cents).toBeCloseTo(15, 6);
    expect(back?.cents).toBeCloseTo(-15, 6);
    expect(back?.beatHz).toBeCloseTo(there?.beatHz ?? 0, 9);
  });

  it('says nothing of notes that one of them has not, or was not heard in', () => {
    const one = resultSample([{ note: 72, fundamental: 0 }]);
    const two = resultSample([{ note: 74, fundamental: 30 }]);
    expect(blendOf(one, two)).toEqual([]);
  });

  it('says nothing where the difference is less than two standard errors', () => {
    const unsure = (fundamental: number) =>
      resultSample([{ note: 84, fundamental, sigma: 30, strikes: 1 }]);
    expect(blendOf(unsure(0), unsure(12))).toEqual([]);
  });

  it('compares in hertz, so two pans judged at different band pitches agree where they sound alike', () => {
    const one = resultSample([{ note: 84, fundamental: 0 }]);
    const two = resultSample([{ note: 84, fundamental: 0 }], { a4: 442 });
    expect(blendOf(one, two)).toEqual([]);
  });
});
