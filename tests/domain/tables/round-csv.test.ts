import { describe, expect, it } from 'vitest';
import { lowCLead } from '../../../src/domain/pans/layouts/low-c-lead';
import { roundId, roundOf } from '../../../src/domain/records/rack-records';
import { roundCsv } from '../../../src/domain/tables/round-csv';
import { cents, hertz, midiNote } from '../../../src/domain/tuning/units';
import { sampleKnockCheck } from '../../storage/rack/rack-sample';
import { readingSample, startSample } from '../rounds/round-sample';

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

  it('names the signs of damage beside the fundamental of the newest reading of each note of the soft round', () => {
    const [soft, later] = [startSample({ day: 5 }), startSample({ day: 9 })];
    const readings = new Map([
      [
        roundOf(soft),
        [
          readingSample(soft, { note: 62 }, 1),
          readingSample(soft, { note: 62 }, 7),
          readingSample(soft, { note: 64 }, 2),
          // A note that is no longer on the pan is not compared.
          readingSample(soft, { note: 40 }, 3),
        ],
      ],
      [roundOf(later), [readingSample(later, { note: 62 })]],
    ]);
    const heard = {
      check: sampleKnockCheck('check-1'),
      round: roundOf(soft),
      signs: new Map([
        [
          midiNote(62),
          [
            { kind: 'choked', againstNeighbours: 0.3, againstBefore: null, knocks: 0 },
            { kind: 'walking', centsPerStrike: cents(-6), strikes: 4 },
          ] as const,
        ],
      ]),
    };
    const columnOf = (text: string) => {
      const [header = [], ...rows] = text
        .trimEnd()
        .split('\r\n')
        .map((row) => row.split(','));
      return rows
        .filter((row) => row[4] === 'fundamental')
        .map((row) => `${row[3]} ${row[header.indexOf('Signs of damage')]}`);
    };
    const table = (found: typeof heard | null) =>
      roundCsv([soft, later], readings, fields, hertz(440), { heard: found });
    expect(columnOf(table(heard))).toEqual(['D4 ', 'E4 none', 'E2 ', 'D4 choked; walking', 'D4 ']);
    const other = { ...heard, round: roundId('another') };
    for (const found of [null, other]) {
      expect(columnOf(table(found)).join('|')).toBe('D4 |E4 |E2 |D4 |D4 ');
    }
    // The octave's row stays empty.
    expect(table(heard).match(/choked; walking/g)).toHaveLength(1);
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
