import { describe, expect, it } from 'vitest';
import { panAnswers } from '../../../src/domain/advice/pan-answers';
import {
  type Blows,
  type LoggedBlows,
  panId,
  type ReadingRecord,
  recordId,
} from '../../../src/domain/records/rack-records';
import { instant, midiNote } from '../../../src/domain/tuning/units';
import { samplePanRecords } from '../../storage/rack/rack-sample';
import { readingSample } from '../rounds/round-sample';

const pan = panId('pan-1');
let made = 0;

/** A set of `count` light blows that moved the fundamental by so many cents, the partials above it along. */
function setOn(
  note: number,
  moved: number,
  { count = 3, logged }: { count?: number; logged?: Partial<LoggedBlows> | null } = {},
): { readonly blows: Blows; readonly readings: readonly ReadingRecord[] } {
  made += 2;
  const [before, after] = [0, moved].map((fundamental, k) =>
    readingSample(null, { note, fundamental, octave: 0, third: 0 }, made + k),
  );
  if (!before || !after) throw new Error('no readings');
  const blows: Blows = {
    kind: 'blows',
    shape: 1,
    id: recordId(`blows-${made}`),
    pan,
    at: instant(made),
    round: null,
    note: midiNote(note),
    logged:
      logged === null ? null : { place: 'long-ends', side: 'above', firmness: 'light', ...logged },
    count,
    before: before.id,
    after: after.id,
  };
  return { blows, readings: [before, after] };
}

const answersOf = (sets: readonly ReturnType<typeof setOn>[]) =>
  panAnswers(
    samplePanRecords({ blows: sets.map(({ blows }) => blows) }),
    sets.flatMap(({ readings }) => readings),
  );

describe('what a pan answers', () => {
  it('is nothing where no set was logged and measured', () => {
    expect(answersOf([])).toEqual([]);
    expect(answersOf([setOn(62, 5, { logged: null })])).toEqual([]);
    const { blows } = setOn(62, 5);
    expect(panAnswers(samplePanRecords({ blows: [blows] }), [])).toEqual([]);
  });

  it('is the middle set of each place, the lowest and the highest, and the notes', () => {
    const [answer, ...others] = answersOf([setOn(66, 7), setOn(62, 4), setOn(62, 1)]);
    expect(others).toEqual([]);
    expect(answer).toMatchObject({
      place: 'long-ends',
      side: 'above',
      sets: 3,
      notes: [62, 66],
    });
    const [fundamental] = answer?.partials ?? [];
    expect(fundamental?.middle).toBeCloseTo(4, 3);
    expect(fundamental?.lowest).toBeCloseTo(1, 3);
    expect(fundamental?.highest).toBeCloseTo(7, 3);
    expect(fundamental?.sets).toBe(3);
  });

  it('counts a set of twice as many blows as half of what it did', () => {
    const [answer] = answersOf([setOn(62, 8, { count: 6 })]);
    expect(answer?.partials[0]?.middle).toBeCloseTo(4, 3);
  });

  it('tells places and sides apart', () => {
    const answers = answersOf([
      setOn(62, 5),
      setOn(62, -5, { logged: { place: 'border', side: 'below' } }),
      setOn(62, 3, { logged: { side: 'below' } }),
    ]);
    expect(answers.map(({ place, side }) => `${place} ${side}`)).toEqual([
      'long-ends above',
      'long-ends below',
      'border below',
    ]);
  });

  it('leaves out what was erased', () => {
    const { blows, readings } = setOn(62, 5);
    const erasure = {
      kind: 'erasure',
      shape: 1,
      id: recordId('gone'),
      pan,
      at: instant(9_999_999),
      target: blows.id,
    } as const;
    expect(panAnswers(samplePanRecords({ blows: [blows], erasures: [erasure] }), readings)).toEqual(
      [],
    );
  });
});
