import { describe, expect, it } from 'vitest';
import { panId, recordId } from '../../../src/domain/records/rack-records';
import { csvRow } from '../../../src/domain/tables/csv-row';
import {
  type ListedReading,
  readingCsvRows,
  readingsCsvHeader,
} from '../../../src/domain/tables/readings-csv';
import { frequencyOf } from '../../../src/domain/tuning/equal-temperament';
import {
  cents,
  decibels,
  hertz,
  instant,
  midiNote,
  seconds,
  shiftedBy,
} from '../../../src/domain/tuning/units';
import * as fc from '../../properties';
import { anyReading } from '../records/record-arbitraries';

/** A reader of its own for RFC 4180, section 2. */
function parse(csv: string): string[][] {
  const rows: string[][] = [];
  let row: string[] = [];
  const field = /(?:"((?:[^"]|"")*)"|([^",\r\n]*))(,|\r\n)/y;
  while (field.lastIndex < csv.length) {
    const from = field.lastIndex;
    const found = field.exec(csv);
    if (!found) throw new Error(`no field at ${from}: ${csv.slice(from, from + 40)}`);
    row.push(found[1]?.replaceAll('""', '"') ?? found[2] ?? '');
    if (found[3] === ',') continue;
    rows.push(row);
    row = [];
  }
  return rows;
}

describe('a row of comma-separated values', () => {
  it('is as RFC 4180, section 2, describes it', () => {
    // The examples of rules 1, 5, 6 and 7.
    expect(csvRow(['aaa', 'bbb', 'ccc'])).toBe('aaa,bbb,ccc\r\n');
    expect(csvRow(['aaa', 'b\r\nbb', 'ccc'])).toBe('aaa,"b\r\nbb",ccc\r\n');
    expect(csvRow(['aaa', 'b"bb', 'ccc'])).toBe('aaa,"b""bb",ccc\r\n');
    expect(csvRow([null, 'a,b', 1.5])).toBe(',"a,b",1.5\r\n');
  });

  it('gives every text back to a reader, but for an apostrophe before a formula', () => {
    const cell = fc.string({ unit: fc.constantFrom(...'ab ,"\r\n\t=+-@\'') });
    fc.assert(
      fc.property(fc.array(cell, { minLength: 1, maxLength: 6 }), (cells) => {
        const [row = []] = parse(csvRow(cells));
        const bare = row.map((each, k) => (each === `'${cells[k]}` ? each.slice(1) : each));
        expect(bare).toEqual(cells);
      }),
    );
  });

  // OWASP, "CSV Injection": cells that begin with one of these may be taken for formulas.
  it.each(['=1+1', '+1', '-1', '@SUM(A1)', '\t=1', '\r=1', '\n=1', '＝1', '  =1'])(
    'holds %j as a text, not as a formula',
    (text) => {
      const [[cell = ''] = []] = parse(csvRow([text]));
      expect(cell).toBe(`'${text}`);
    },
  );

  it.each([
    ['zero-width space', '\u200b'],
    ['zero-width joiner', '\u200d'],
    ['byte order mark', '\ufeff'],
    ['soft hyphen', '\u00ad'],
    ['turn of the direction', '\u202e'],
    ['Hangul filler', '\u3164'],
    ['escape', '\u001b'],
  ])('holds it as a text also behind a %s, which nobody sees', (_name, unseen) => {
    for (const text of [`${unseen}=1+1`, ` ${unseen}${unseen} @SUM(A1)`]) {
      expect(parse(csvRow([text]))).toEqual([[`'${text}`]]);
    }
  });

  it('lets no part of a text begin a cell of its own', () => {
    // OWASP's example of a field that closes its quotes and begins a new cell.
    const text = '","=cmd|\' /C calc\'!A0",","';
    expect(parse(csvRow(['x', text]))).toEqual([['x', text]]);
  });

  it('leaves numbers as numbers, below zero too', () => {
    expect(csvRow([-5.25, 0, 1e-7, Number.NaN])).toBe('-5.25,0,1e-7,\r\n');
  });
});

const d5 = midiNote(74);
const line = (hz: number) => ({
  hz: hertz(hz),
  sigmaCents: cents(0.1),
  decaySeconds: seconds(0.3),
  levelDb: decibels(-20),
});

function listed(parts: Partial<ListedReading> = {}): ListedReading {
  const hz = shiftedBy(frequencyOf(d5), -6);
  const strike = {
    fundamental: line(hz),
    isInferred: false,
    octave: line(shiftedBy(2 * hz, 4)),
    octaveRival: null,
    third: { ...line(shiftedBy(3 * hz, 9)), kind: 'twelfth' as const },
    glideCents: cents(3),
    peakDb: decibels(-10),
    loudness: 'good' as const,
    buzzDb: decibels(-30),
    alsoRinging: [],
  };
  return {
    reading: {
      shape: 1,
      id: recordId('reading-1'),
      pan: panId('p'),
      at: instant(Date.UTC(2025, 10, 25, 18, 30)),
      kind: 'reading',
      round: null,
      note: d5,
      strikes: [strike, strike, strike],
      taking: { source: 'microphone', sampleRate: 48_000, processing: [], gaps: 0, appVersion: '' },
      sound: null,
    },
    panName: '=HYPERLINK("x"), "loft" lead',
    serial: '7',
    a4: hertz(440),
    offset: cents(0),
    conditions: { temperature: -2.5, standing: 'sun' },
    signs: null,
    round: { at: instant(Date.UTC(2025, 10, 25, 18)), way: 'quick' },
    state: 'playable',
    minutesAhead: () => -210,
    ...parts,
  };
}

describe('readings as a table', () => {
  it('have one row per partial, with units in the header', () => {
    const [names = [], ...rows] = parse(readingsCsvHeader.slice(1) + readingCsvRows(listed()));
    expect(readingsCsvHeader.charCodeAt(0)).toBe(0xfeff);
    const column = (name: string) => rows.map((row) => row[names.indexOf(name)]);
    expect(column('Partial')).toEqual(['fundamental', 'octave', 'twelfth']);
    expect(column('Times the fundamental')).toEqual(['1', '2', '3']);
    expect(column('Against target (cents)')).toEqual(['-6', '-2', '3']);
    expect(column('Against own fundamental (cents)')).toEqual(['', '4', '9']);
    // D5 is 587.3295 Hz over A4 = 440 Hz; 6 cents below it is 585.2975 Hz.
    expect(column('Frequency (Hz)')[0]).toBe('585.2975');
    // Each partial has its own target: two and three times that.
    expect(column('Target (Hz)')).toEqual(['587.3295', '1174.6591', '1761.9886']);
    expect(column('State')[0]).toBe('playable');
    expect(column('Kind of round')[0]).toBe('quick');
    expect(column('Taken at (local)')[0]).toBe('2025-11-25T15:00:00-03:30');
    expect(column('Round begun at (local)')[0]).toBe('2025-11-25T14:30:00-03:30');
    expect(column('Taken at (UTC)')[0]).toBe('2025-11-25T18:30:00.000Z');
    expect(column('Note')[0]).toBe('D5');
    expect(column('Strikes')[0]).toBe('3');
    expect(column('Buzz (dB)')).toEqual(['-30', '', '']);
    expect(column('Signs of damage')).toEqual(['', '', '']);
    expect(column('Air temperature (°C)')[0]).toBe('-2.5');
    expect(column('Pan')[0]).toBe('\'=HYPERLINK("x"), "loft" lead');
  });

  it('have as many cells in every row as in the header, and no formula, whatever was read', () => {
    const [names = []] = parse(readingsCsvHeader.slice(1));
    const anyText = fc.string({ unit: fc.constantFrom(...'ab ,"\r\n\t=+-@\'') });
    fc.assert(
      fc.property(anyReading, anyText, anyText, (reading, panName, serial) => {
        for (const row of parse(readingCsvRows(listed({ reading, panName, serial })))) {
          expect(row).toHaveLength(names.length);
          for (const cell of row) {
            const isNumber = /^-?\d+(\.\d+)?(e-?\d+)?$/.test(cell);
            if (!isNumber) expect(cell).not.toMatch(/^[=+\-@\t\r\n]/);
          }
        }
      }),
    );
  });
});
