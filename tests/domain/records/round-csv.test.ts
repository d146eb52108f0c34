import { describe, expect, it } from 'vitest';
import { lowCLead } from '../../../src/domain/pans/low-c-lead';
import { roundOf } from '../../../src/domain/records/rack-records';
import { roundCsv } from '../../../src/domain/records/round-csv';
import { cents, hertz } from '../../../src/domain/tuning/units';
import { readingSample, startSample } from '../work/round-sample';

const fields = { name: 'Heron', serial: '=1+1', layout: lowCLead };

describe('the table of a round', () => {
  it('has a row for each partial of each reading, older rounds and readings first', () => {
    const [later, earlier] = [startSample({ day: 30 }), startSample()];
    const readings = new Map([
      [
        roundOf(later),
        [
          readingSample(later, { note: 62, third: 0 }, 9),
          readingSample(later, { note: 60, octave: null }, 3),
        ],
      ],
      [roundOf(earlier), [readingSample(earlier, { note: 62, octave: 4 }, 1)]],
    ]);
    const text = roundCsv([later, earlier], readings, fields, hertz(440));
    const rows = text.trimEnd().split('\r\n').slice(1);
    const names = rows.map((row) => row.split(',').slice(3, 5).join(' '));
    expect(names).toEqual([
      'D4 fundamental',
      'D4 octave',
      'C4 fundamental',
      'D4 fundamental',
      'D4 octave',
      'D4 double octave',
    ]);
    expect(rows[0]).toContain("Heron,'=1+1,2026-01-10");
  });

  it('gives cents against the target with the offset of the note', () => {
    const start = startSample();
    const layout = {
      ...lowCLead,
      drums: lowCLead.drums.map((drum) => ({
        ...drum,
        notes: drum.notes.map((place) =>
          place.note === 62 ? { ...place, offset: cents(-5) } : place,
        ),
      })),
    };
    const readings = new Map([[roundOf(start), [readingSample(start, { note: 62 })]]]);
    const text = roundCsv([start], readings, { ...fields, layout }, hertz(440));
    const [, row = ''] = text.split('\r\n');
    // "Against target (cents)" is the eighth column: true to equal temperament, 5 above its target.
    expect(Number(row.split(',')[7])).toBeCloseTo(5, 2);
  });
});
