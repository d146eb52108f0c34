import { describe, expect, it } from 'vitest';
import { instant, midiNote, minutes } from '../../../src/domain/tuning/units';
import { changeWords } from '../../../src/ui/words/change-words';
import { centsWords, counted, pluralOf } from '../../../src/ui/words/count-words';
import { durationWords } from '../../../src/ui/words/fall/cautions-words';
import { reasonSentence, tonightWords } from '../../../src/ui/words/fall/tonight-words';
import { reminderWords } from '../../../src/ui/words/keeping/backup-reminder-words';
import { knockWordsOf } from '../../../src/ui/words/knock-again-words';
import { firstWords, listWords, noteRowWords, rowWords } from '../../../src/ui/words/list-words';
import { adviceTitle, leaveWords, riskWords } from '../../../src/ui/words/measuring/advice-words';
import { benchWords } from '../../../src/ui/words/measuring/bench-words';
import { agoWords, needWords } from '../../../src/ui/words/rack-words';
import { headlineWords } from '../../../src/ui/words/result-words';

describe('counts in words', () => {
  it('have the noun of one for one only', () => {
    expect([0, 1, 2, 21].map((count) => counted(count, 'note'))).toEqual([
      '0 notes',
      '1 note',
      '2 notes',
      '21 notes',
    ]);
    expect(counted(1, 'entry', 'entries')).toBe('1 entry');
    expect(counted(3, 'entry', 'entries')).toBe('3 entries');
    expect(pluralOf(1, 'is', 'are')).toBe('is');
  });

  it('of cents are whole and without a sign', () => {
    expect(centsWords(-1.4)).toBe('1 cent');
    expect(centsWords(0.3)).toBe('0 cents');
    expect(centsWords(11.6)).toBe('12 cents');
  });

  it('are right for one wherever they are said', () => {
    expect(durationWords(minutes(1))).toBe('1 minute');
    expect(durationWords(minutes(61))).toBe('1 hour 1 minute');
    expect(needWords({ kind: 'pan-pitch', cents: -1.2 } as Parameters<typeof needWords>[0])).toBe(
      'the whole pan is 1 cent flat',
    );
    expect(needWords({ kind: 'drift', cents: 1.2 } as Parameters<typeof needWords>[0])).toBe(
      'notes moved 1 cent since the round before',
    );
    expect(reasonSentence({ kind: 'many-left-out', count: 1, of: 12 })).toBe(
      '1 of the 12 notes you need is bad.',
    );
    expect(reminderWords({ kind: 'readings', count: 1 })).toBe('1 reading is in no backup yet.');
    expect(reminderWords({ kind: 'days', days: 1, isFirst: false })).toBe(
      'The last backup is 1 day old.',
    );
    expect(changeWords.quiet(1)).toBe('1 note: no sure change.');
    expect(changeWords.moved(1)).toBe('changed by itself');
    expect(changeWords.moved(4)).toBe('changed by themselves');
    expect(riskWords({ overshoot: 0.05, worsening: 0 } as Parameters<typeof riskWords>[0])).toBe(
      'About 1 time in 20 it goes too far.',
    );
    expect(tonightWords.magnetHint('A4', 1)).toMatch(/^A4 is sharp/);
    expect(tonightWords.magnetHint('A4 and D5', 2)).toMatch(/^A4 and D5 are sharp/);
    const standings = { good: 0, playable: 0, out: 1, avoid: 0, unread: 0 };
    expect(headlineWords(standings)).toEqual({ big: '1 out', small: '1 heard' });
    const now = instant(new Date(2026, 10, 30, 12).getTime());
    const daysAgo = (days: number) => agoWords(now - days * 24 * 3600 * 1000, now);
    expect([1, 2, 14, 60].map(daysAgo)).toEqual([
      'yesterday',
      '2 days ago',
      '2 weeks ago',
      '2 months ago',
    ]);
  });
});

describe('lists in words', () => {
  it('end with "and", without a comma before it', () => {
    expect(listWords([])).toBe('');
    expect(listWords(['C4'])).toBe('C4');
    expect(listWords(['C4', 'D5'])).toBe('C4 and D5');
    expect(listWords(['C4', 'D5', 'E♭5'])).toBe('C4, D5 and E♭5');
  });

  it('are a plain row where nothing ends, and leave out what is empty', () => {
    expect(rowWords(['C4', '', 'D5', 'E♭5'])).toBe('C4, D5, E♭5');
    expect(noteRowWords([60, 62].map(midiNote))).toBe('C4, D4');
  });

  it('that are too long say how many more there are', () => {
    const notes = ['C4', 'D4', 'E4', 'F4'];
    expect(firstWords(notes, 4)).toBe('C4, D4, E4, F4');
    expect(firstWords(notes, 2)).toBe('C4, D4 and 2 more');
  });
});

describe('what to do next', () => {
  it('names the note to strike again after a knock, and the notes to damp first', () => {
    expect(knockWordsOf('D5')).toEqual({
      says: 'knock or very short ring:',
      todo: 'strike the middle of D5 again',
    });
    expect(knockWordsOf(null).todo).toBe('strike the middle again');
    expect(benchWords.cover('D5 and D6', 'A4 and A5')).toBe(
      'Damp D5 and D6 first; A4 and A5 if you can.',
    );
    expect(benchWords.cover('', 'A5')).toBe('Damp A5 first.');
  });

  it('is one more strike, not "leave it", where only strikes are missing', () => {
    const leave = { kind: 'leave', why: { kind: 'not-settled' } } as const;
    expect([adviceTitle(leave), leaveWords(leave.why)]).toEqual([
      'Not yet',
      'Strike again: three must agree.',
    ]);
    expect(adviceTitle({ kind: 'leave', why: { kind: 'aligned' } })).toBe('Leave it');
  });
});
