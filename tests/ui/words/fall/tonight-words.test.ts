import { describe, expect, it } from 'vitest';
import { tonightRuleNames } from '../../../../src/domain/knock-check/tonight-rules';
import { lookKinds } from '../../../../src/domain/records/look-kinds';
import { cents, instant, midiNote } from '../../../../src/domain/tuning/units';
import { lookWords } from '../../../../src/ui/words/fall/knock-words';
import { ruleWords } from '../../../../src/ui/words/fall/tonight-rule-words';
import {
  noteReasonWords,
  reasonSentence,
  verdictSentence,
} from '../../../../src/ui/words/fall/tonight-words';

const now = instant(0);

describe('the sentence of tonight', () => {
  it('names the notes that are left out', () => {
    const notes = [62, 69, 75].map(midiNote);
    expect(verdictSentence({ kind: 'play-without', notes }, now)).toBe(
      'Play it without D4, A4 and E♭5.',
    );
    expect(verdictSentence({ kind: 'play-without', notes: [midiNote(62)] }, now)).toBe(
      'Play it without D4.',
    );
  });

  it('says until when to wait where a time tells', () => {
    const until = instant(new Date(2026, 4, 3, 15, 5).getTime());
    expect(verdictSentence({ kind: 'wait', until }, now)).toBe(
      'Wait until 15:05, then look again.',
    );
    expect(verdictSentence({ kind: 'wait', until }, until)).toBe('The wait is over. Look again.');
    expect(verdictSentence({ kind: 'wait', until: null }, now)).toBe(
      'Wait. Nothing can be said yet.',
    );
  });

  it('says how far a note or the pan is off, in whole cents', () => {
    expect(noteReasonWords({ kind: 'off', cents: cents(-35.4) })).toBe('35 cents flat');
    expect(reasonSentence({ kind: 'pan-off', cents: cents(26) })).toMatch(
      /^The whole pan is 26 cents sharp/,
    );
  });
});

describe('the looks and the rules', () => {
  it('all have their words, and every look says what nobody must do', () => {
    for (const look of lookKinds) expect(lookWords[look].never).toMatch(/^Do not /);
    for (const name of tonightRuleNames) expect(ruleWords[name]).toBeTruthy();
  });
});
