import { describe, expect, it } from 'vitest';
import type { Heard, RefusalReason } from '../../../src/domain/measurement/strike';
import { midiNote, seconds } from '../../../src/domain/tuning/units';
import { phaseAfter, type ReadoutPhase } from '../../../src/state/listening/readout-phase';
import { strikeSample } from '../../domain/reading/strike-sample';

const listening: ReadoutPhase = { kind: 'listening' };
const phaseOf = (...heard: Heard[]): ReadoutPhase => heard.reduce(phaseAfter, listening);
const refusal = (event: number, reason: RefusalReason): Heard => ({
  kind: 'refused',
  event,
  at: seconds(event),
  reason,
  note: reason === 'wrong-note' ? midiNote(86) : null,
  candidates: reason === 'wrong-note' ? [midiNote(86)] : [],
});

describe('the readout', () => {
  it('shows a verdict from the first look on and settles with the third strike', () => {
    expect(phaseOf(strikeSample({ event: 1, provisional: true })).kind).toBe('heard');
    expect(phaseOf(strikeSample({ event: 1 }), strikeSample({ event: 2 })).kind).toBe('heard');
    const three = [1, 2, 3].map((event) => strikeSample({ event }));
    expect(phaseOf(...three).kind).toBe('settled');
  });

  it('says "again" when strikes disagree, and goes on from the newest', () => {
    const phase = phaseOf(
      strikeSample({ event: 1, fundamental: -9 }),
      strikeSample({ event: 2, fundamental: 4 }),
    );
    expect(phase).toMatchObject({ kind: 'refused', reason: 'again' });
    const next = phaseAfter(phase, strikeSample({ event: 3, fundamental: 4.2 }));
    expect(next).toMatchObject({ kind: 'heard' });
  });

  it('keeps what it shows when only a first look disagrees', () => {
    const before = phaseOf(strikeSample({ event: 1, fundamental: -9 }));
    const look = strikeSample({ event: 2, provisional: true, fundamental: 0 });
    expect(phaseAfter(before, look)).toBe(before);
  });

  it('loses no strikes to a first look that took the note for another one', () => {
    const two = phaseOf(strikeSample({ event: 1 }), strikeSample({ event: 2 }));
    const look = phaseAfter(two, strikeSample({ event: 3, note: 86, provisional: true }));
    expect(look).toMatchObject({ kind: 'heard', reading: { note: 86 } });
    expect(phaseAfter(look, strikeSample({ event: 3 })).kind).toBe('settled');
    expect(phaseAfter(look, refusal(3, 'unclear'))).toMatchObject({
      held: { note: 74, strikes: { length: 2 } },
    });
    expect(phaseAfter(look, strikeSample({ event: 3, note: 86 }))).toMatchObject({
      kind: 'heard',
      reading: { note: 86, strikes: { length: 1 } },
    });
  });

  it('takes a first look back when the strike turns out to be no good', () => {
    const phase = phaseOf(strikeSample({ event: 1, provisional: true }), refusal(1, 'lost-audio'));
    expect(phase).toMatchObject({ kind: 'refused', reason: 'lost-audio', held: null });
  });

  it('stays settled when the fourth strike is far off, and goes over to a new value that is confirmed', () => {
    const three = phaseOf(...[1, 2, 3].map((event) => strikeSample({ event })));
    const fourth = phaseAfter(three, strikeSample({ event: 4, fundamental: -8 }));
    expect(fourth).toMatchObject({
      kind: 'settled',
      reading: { leftOut: [{ why: 'fundamental' }] },
    });
    const fifth = phaseAfter(fourth, strikeSample({ event: 5, fundamental: -8 }));
    expect(fifth).toMatchObject({ kind: 'heard', reading: { fundamental: { cents: -8 } } });
  });

  it('is settled with three that agree out of four, although it said "again" in between', () => {
    const values = [0, 9, 0.2, 0.1];
    const strikes = values.map((fundamental, k) => strikeSample({ event: k + 1, fundamental }));
    expect(phaseOf(...strikes.slice(0, 3))).toMatchObject({ reason: 'again' });
    expect(phaseOf(...strikes)).toMatchObject({
      kind: 'settled',
      reading: { strikes: { length: 3 } },
    });
  });

  it('shows a note that walks, and does not settle', () => {
    const strikes = [0, -1, -2, -3].map((fundamental, k) =>
      strikeSample({ event: k + 1, fundamental }),
    );
    expect(phaseOf(...strikes)).toMatchObject({
      kind: 'heard',
      reading: { walking: { centsPerStrike: expect.closeTo(-1, 6) } },
    });
  });

  it('holds the notes that a strike may have been, and what was known before', () => {
    const candidates = [midiNote(74), midiNote(86)];
    const heard = { ...refusal(2, 'which-note'), candidates };
    expect(phaseOf(strikeSample({ event: 1 }), heard)).toMatchObject({
      kind: 'refused',
      reason: 'which-note',
      candidates,
      held: { note: 74 },
    });
    expect(phaseOf(refusal(3, 'wrong-note'))).toMatchObject({ candidates: [] });
  });

  it('holds the reading through a knock and a wrong note', () => {
    const knocked = phaseOf(strikeSample({ event: 1 }), {
      kind: 'knock',
      event: 2,
      at: seconds(2),
    });
    expect(knocked).toMatchObject({ kind: 'refused', reason: 'knock' });
    const wrong = phaseAfter(knocked, refusal(3, 'wrong-note'));
    expect(wrong).toMatchObject({ reason: 'wrong-note', note: 86 });
    expect(phaseAfter(wrong, strikeSample({ event: 4 }))).toMatchObject({
      kind: 'heard',
      reading: { strikes: { length: 2 } },
    });
  });
});
