import { describe, expect, it } from 'vitest';
import { panId, recordId } from '../../../../src/domain/records/rack-records';
import { restoreRecord } from '../../../../src/domain/records/restore/restore-record';
import { instant } from '../../../../src/domain/tuning/units';
import { visitAnswers } from '../../../../src/ui/screens/tuner/visit-answers';
import { tunedWords } from '../../../../src/ui/words/tuner/tuned-words';

const now = instant(new Date(2026, 4, 3, 18, 5).getTime());
const typed = (visitedAt: string, nextVisit = '') =>
  visitAnswers({ visitedAt, who: ' the tuner ', done: '', remarks: '', nextVisit }, true, now);

describe('what was typed about a visit', () => {
  it('is kept when its day is one on which the tuner can have been here', () => {
    expect(typed('2026-05-02T10:00')).toMatchObject({ who: 'the tuner', nextVisit: null });
  });

  it.each(['0026-05-02T10:00', '0206-05-02T10:00', '1969-12-31T10:00', '2026-05-04T10:00', ''])(
    'is asked again when its day is %j, with a sentence that says why',
    (day) => {
      expect(typed(day)).toBe('visitedAt');
      expect(tunedWords.momentBad).toContain('from 1971 on');
    },
  );

  it('is asked again when the next visit lies before this one', () => {
    expect(typed('2026-05-02T10:00', '0027-05-02')).toBe('nextVisit');
    expect(typed('2026-05-02T10:00', '2026-05-01')).toBe('nextVisit');
    expect(typed('2026-05-02T10:00', '2026-11-02')).toMatchObject({ startsBaseline: true });
  });

  it('is always listed once it is kept, from the first day on', () => {
    const answers = typed('1971-01-02T10:00');
    if (typeof answers === 'string') throw new Error(answers);
    const head = { shape: 1, id: recordId('visit'), pan: panId('pan'), at: now } as const;
    const record = { ...head, kind: 'tuner-visit', ...answers } as const;
    expect(restoreRecord(record)).toEqual({ kind: 'restored', record, repairs: [] });
  });

  it('is found again where an older app kept it with a year before 1970: on the day it was written', () => {
    const kept = {
      shape: 1,
      id: 'visit',
      pan: 'pan',
      at: now,
      kind: 'tuner-visit',
      visitedAt: new Date('0026-05-02T10:00').getTime(),
      who: 'the tuner',
      done: 'blended',
      remarks: '',
      nextVisit: null,
      startsBaseline: true,
    };
    expect(restoreRecord(kept)).toEqual({
      kind: 'restored',
      record: { ...kept, visitedAt: now },
      repairs: ['visitedAt'],
    });
  });
});
