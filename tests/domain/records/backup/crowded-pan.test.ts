import { describe, expect, it } from 'vitest';
import { backupLimits } from '../../../../src/domain/records/backup/backup-limits';
import { CrowdedPan } from '../../../../src/domain/records/backup/crowded-pan';

const limits = { partsOfPan: 100, pans: 20, line: 5e5 };
const lineOf = (pan: string) => `["00000000",{"shape":1,"id":"x","pan":"${pan}","kind":"mark"}],\n`;
const lookedAt = (text: string, pieceLength: number, given = limits): CrowdedPan => {
  const look = new CrowdedPan(given);
  for (let from = 0; from < text.length && !look.isOver; from += pieceLength) {
    look.push(text.slice(from, from + pieceLength));
  }
  return look;
};

describe('a quick look at a file', () => {
  it('finds a pan with more lines than any has, in pieces of any size', () => {
    for (const piece of [1, 7, 1000, 1e6]) {
      expect(lookedAt(`head\n${lineOf('a').repeat(101)}`, piece).isFound).toBe(true);
      expect(lookedAt(`head\n${lineOf('a').repeat(100)}`, piece).isFound).toBe(false);
    }
  });

  it('finds more pans than any rack has', () => {
    const text = Array.from({ length: 21 }, (_, k) => lineOf(`pan-${k}`)).join('');
    expect(lookedAt(text, 50).isFound).toBe(true);
  });

  it('goes no further than one pan could reach, and takes a full rack for what it is', () => {
    const text = (lineOf('a') + lineOf('b')).repeat(500);
    const look = lookedAt(text, 64);
    expect([look.isFound, look.isOver]).toEqual([false, true]);
  });

  it('takes no harm from lines without an end and from lines that name no pan', () => {
    const endless = lookedAt('x'.repeat(1e6), 1e4);
    expect([endless.isFound, endless.isOver]).toEqual([false, true]);
    expect(lookedAt('x\n'.repeat(1e6), 1e6).isFound).toBe(false);
    expect(lookedAt(`"pan":"${'y'.repeat(1e6)}\n`.repeat(3), 1e5).isFound).toBe(false);
  });

  it('leaves a hundred pans with fifty rounds of 30 notes alone, which are a rack as any', () => {
    // Per pan: 50 rounds, each with its beginning, its end and 30 readings, and the pan's own records.
    expect(50 * (30 + 2) + 100).toBeLessThan(backupLimits.partsOfPan);
    expect(100).toBeLessThan(backupLimits.pans);
    expect(100 * 50 * 32).toBeLessThan(backupLimits.parts);
  });
});
