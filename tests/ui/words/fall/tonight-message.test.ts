import { describe, expect, it } from 'vitest';
import { cents, instant, midiNote } from '../../../../src/domain/tuning/units';
import { messageText, tonightMessage } from '../../../../src/ui/words/fall/tonight-message';

describe('what the band leader is sent', () => {
  it('is the pan, the time, the answer, and what is wrong with which note', () => {
    const note = (midi: number, off: number) => ({
      note: midiNote(midi),
      action: 'avoid' as const,
      reasons: [{ kind: 'off' as const, cents: cents(off) }],
      isNeeded: true,
      isUnread: false,
      magnet: 'none' as const,
    });
    const text = messageText(
      tonightMessage({
        name: 'Heron',
        now: instant(new Date(2026, 4, 3, 18, 5).getTime()),
        verdict: { kind: 'play-without', notes: [62, 69].map(midiNote) },
        reasons: [],
        first: ['hangers'],
        tell: ['rim'],
        unsure: ['stand'],
        notes: [note(62, -35), note(69, -40)],
      }),
    );
    expect(text.split('\n')).toEqual([
      'Heron, 3 May 2026, 18:05',
      'Play it without D4 and A4.',
      'D4: 35 cents flat.',
      'A4: 40 cents flat.',
      'Hang it up again so that it swings freely. Tighten loose parts with your fingers, or take them off and keep them.',
      'Keep in mind: a bent rim.',
      'Nobody could tell: a bad stand. Show it to somebody who knows.',
    ]);
  });
});
