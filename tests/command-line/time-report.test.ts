import { describe, expect, it } from 'vitest';
import { timeReport } from '../../src/command-line/time-report.mjs';

const file = (name: string, seconds: number) => ({
  name,
  startTime: 5000,
  endTime: 5000 + 1000 * seconds,
  assertionResults: [
    { fullName: `${name} first`, duration: 250 * seconds },
    { fullName: `${name} without a time` },
  ],
});
const steps = [
  { name: 'types', seconds: 4 },
  { name: 'unit tests', seconds: 41.26 },
];

describe('the report of a test run', () => {
  it('tells the time of each step in order, their sum, and that the target is met', () => {
    expect(timeReport(steps, [], 60).slice(-4)).toEqual([
      'Steps',
      '    4.0 s  types',
      '   41.3 s  unit tests',
      '   45.3 s  together; target on two idle cores 60 s: met',
    ]);
  });

  it('says so when the target is missed', () => {
    expect(timeReport(steps, [], 45).at(-1)).toMatch(/target on two idle cores 45 s: missed$/);
  });

  it('names the slowest files and tests, the slowest first, and no more than eight of each', () => {
    const files = Array.from({ length: 12 }, (_, k) => file(`file ${k}`, k));
    const lines = timeReport(steps, files, 60);
    const tests = lines.indexOf('Tests that took longest');
    expect(lines.slice(1, tests)).toHaveLength(8);
    expect(lines[1]).toBe('   11.0 s  file 11');
    expect(lines[8]).toBe('    4.0 s  file 4');
    expect(lines[tests + 1]).toBe('    2.8 s  file 11 first (file 11)');
    expect(lines.indexOf('Steps') - tests - 1).toBe(8);
  });
});
