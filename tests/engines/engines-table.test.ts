import { describe, expect, it } from 'vitest';
import { type EngineOutcome, engineReport, faultsOf, withReport } from './engines-table';

const truth = { fundamental: -9, octave: -5, third: 2 };

const walked = (
  engine: string,
  cents: typeof truth | null,
  trouble: string | null = null,
): EngineOutcome => ({
  engine,
  version: '1.2',
  steps: [
    { step: 'listening', trouble: cents ? null : 'silent', ...(cents ? { cents } : {}) },
    { step: 'update', trouble },
  ],
});
const near = { fundamental: -9.04, octave: -5, third: 2.05 };

describe('what the engines heard', () => {
  it('passes when they are within a tenth of a cent of each other and all steps went well', () => {
    expect(faultsOf([walked('One', truth), walked('Other', near)], truth)).toEqual([]);
  });

  it('fails when one partial of one engine is farther off the others, by name of the figure', () => {
    const faults = faultsOf(
      [walked('One', truth), walked('Other', { ...near, octave: -5.11 })],
      truth,
    );
    expect(faults).toEqual(['How far the engines are apart: 0.11 cents, at most 0.1.']);
  });

  it('fails when they agree about something that was not planted', () => {
    const wrong = { ...truth, third: 2.6 };
    expect(faultsOf([walked('One', wrong), walked('Other', wrong)], truth)).toEqual([
      'How far off what was planted: 0.60 cents, at most 0.5.',
    ]);
  });

  it('fails when one of them has heard nothing, or no number', () => {
    expect(faultsOf([walked('One', truth), walked('Other', null)], truth)).toEqual([
      'Other, listening: silent',
      'How far the engines are apart: not measured, at most 0.1.',
    ]);
    const noNumber = { ...truth, octave: Number.NaN };
    expect(faultsOf([walked('One', truth), walked('Other', noNumber)], truth)).toHaveLength(2);
    expect(faultsOf([], truth)).toHaveLength(2);
  });

  it('names a step that failed', () => {
    expect(faultsOf([walked('One', truth, 'not offered')], truth)).toEqual([
      'One, update: not offered',
    ]);
  });
});

describe('the table', () => {
  const report = engineReport([walked('One', near), walked('Other', truth, 'not offered')], {
    day: '30 November 2026',
    system: 'Debian 12',
    truth,
  });

  it('has a column for each engine with its version, a row for each step, and the cents', () => {
    expect(report.split('\n').slice(0, 7)).toEqual([
      '|                            | One 1.2 | Other 1.2  |',
      '| -------------------------- | ------- | ---------- |',
      '| listening                  | ok      | ok         |',
      '| update                     | ok      | **failed** |',
      '| fundamental heard, cents   | −9.04   | −9.00      |',
      '| octave heard, cents        | −5.00   | −5.00      |',
      '| double octave heard, cents | 2.05    | 2.00       |',
    ]);
    expect(report).toContain('30 November 2026, Debian 12. Planted: −9, −5, 2 cents.');
    expect(report).toContain('apart: 0.05 cents (at most 0.1)');
  });

  it('takes the place of the one before in README, and nothing else', () => {
    const begin = '<!-- npm run engines -- --readme: from here -->';
    const readme = `before\n${begin}\n\nold\n\n<!-- to here -->\nafter\n`;
    const written = withReport(readme, report);
    expect(written).toBe(`before\n${begin}\n\n${report}\n\n<!-- to here -->\nafter\n`);
    expect(withReport(written, report)).toBe(written);
    expect(() => withReport('no place', report)).toThrow('README has no place');
  });
});
