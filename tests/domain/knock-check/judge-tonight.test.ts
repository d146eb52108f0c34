// The rules of tonight, each as a sentence. What they should say is common practice, no source: the owner of the
// rules is the user.
import { describe, expect, it } from 'vitest';
import { judgeTonight, type TonightFindings } from '../../../src/domain/knock-check/judge-tonight';
import { pitchClassOf } from '../../../src/domain/knock-check/saved-tunes';
import { notesOfKey } from '../../../src/domain/knock-check/set-needs';
import type { SignKind } from '../../../src/domain/knock-check/tonight-notes';
import { type RuleChanges, rulesWith } from '../../../src/domain/knock-check/tonight-rules';
import { lowCLead } from '../../../src/domain/pans/layouts/low-c-lead';
import { type LookKind, lookKinds } from '../../../src/domain/records/look-kinds';
import {
  type KnockCheck,
  panId,
  recordId,
  roundId,
} from '../../../src/domain/records/rack-records';
import type { RoundResult } from '../../../src/domain/rounds/round-result';
import { parseNote } from '../../../src/domain/tuning/note-names';
import { instant, type MidiNote, midiNote } from '../../../src/domain/tuning/units';
import { type ResultSketch, resultSample, wholeLead } from '../rounds/result-sample';
import type { NoteSketch } from '../rounds/round-sample';

const n = (name: string): MidiNote => parseNote(name) ?? midiNote(0);
const minute = 60_000;
type Off = Readonly<Record<string, number | Partial<NoteSketch>>>;

/** A lead whose notes all lie `shift` cents from the band, but for those in `off`, which are that far from the pan. */
function lead(off: Off = {}, shift = 0, sketch: ResultSketch = {}): RoundResult {
  const own = new Map(Object.entries(off).map(([name, what]) => [n(name) as number, what]));
  return resultSample(
    wholeLead((note) => {
      const what = own.get(note) ?? 0;
      if (typeof what === 'number') return { fundamental: shift + what };
      return { fundamental: shift, ...what };
    }),
    sketch,
  );
}

const sound = lead();

function checked(
  yes: readonly LookKind[] = [],
  { minutes = -1, own = true }: { minutes?: number; own?: boolean } = {},
): KnockCheck {
  return {
    kind: 'knock-check',
    shape: 1,
    id: recordId('check'),
    pan: panId('pan-1'),
    at: instant(sound.at + minutes * minute),
    round: own ? sound.round : null,
    looks: lookKinds.map((look) => ({
      look,
      answer: yes.includes(look) ? 'yes' : 'no',
      photo: null,
    })),
    impact: null,
    remarks: '',
  };
}

const found = (more: Partial<TonightFindings> = {}): TonightFindings => ({
  layout: lowCLead,
  check: null,
  result: sound,
  cracked: [],
  signs: new Map(),
  magnets: new Map(),
  needed: null,
  ...more,
});
const judged = (more: Partial<TonightFindings> = {}, changes: RuleChanges = {}) =>
  judgeTonight(found(more), rulesWith(changes));
const shown = (sign: SignKind, ...names: string[]) =>
  new Map(names.map((name) => [n(name), [{ kind: sign }]]));
const noteOf = (result: ReturnType<typeof judgeTonight>, name: string) =>
  result.notes.find(({ note }) => note === n(name));
const inFAndBFlat = new Set(['F4', 'Bb4'].flatMap((name) => notesOfKey(pitchClassOf(n(name)))));

describe('a pan with nothing wrong', () => {
  it('is played', () => {
    expect(judged()).toMatchObject({ verdict: { kind: 'play' }, reasons: [], first: [], tell: [] });
    expect(judged({ check: checked() })).toMatchObject({ verdict: { kind: 'play' } });
  });

  it('that shifted a little as a whole is played, and no note is held against it', () => {
    const result = judged({ result: lead({}, -8) });
    expect(result.verdict).toEqual({ kind: 'play' });
    expect(result.againstBand?.cents).toBeCloseTo(-8, 3);
    expect(result.againstBand?.isHeard).toBe(false);
    expect(result.notes.every(({ action }) => action === 'play')).toBe(true);
  });
});

describe('a crack', () => {
  it('that was seen means that the pan is not played, whatever else was found', () => {
    const check = checked(['crack', 'heat', 'water']);
    expect(judged({ check, result: null })).toMatchObject({
      verdict: { kind: 'do-not-play' },
      reasons: [{ kind: 'look', look: 'crack' }],
    });
  });

  it('that is marked on a note means that the pan is not played', () => {
    expect(judged({ cracked: [n('G4')] })).toMatchObject({
      verdict: { kind: 'do-not-play' },
      reasons: [{ kind: 'cracked-note', note: n('G4') }],
    });
  });
});

describe('a pan that has not settled', () => {
  it('because it was in the sun or a hot van gets no verdict for half an hour', () => {
    const check = checked(['heat'], { own: false });
    const expected = {
      verdict: { kind: 'wait', until: check.at + 30 * minute },
      reasons: [{ kind: 'look', look: 'heat' }],
    };
    expect(judged({ check, result: null })).toMatchObject(expected);
    expect(judged({ check })).toMatchObject(expected);
  });

  it('waits however bad its notes were', () => {
    const result = lead({ F4: -60, G4: -60, A4: -60 }, -40);
    expect(judged({ check: checked(['heat']), result }).verdict.kind).toBe('wait');
  });

  it('is judged by a round that was begun after the wait', () => {
    const check = checked(['heat'], { minutes: -31, own: false });
    expect(judged({ check }).verdict).toEqual({ kind: 'play' });
    const early = checked(['heat'], { minutes: -29, own: false });
    expect(judged({ check: early }).verdict.kind).toBe('wait');
  });

  it('when it was struck gets no verdict from that round', () => {
    for (const standing of ['sun', 'unloaded'] as const) {
      const result = lead({}, 0, { conditions: { standing } });
      expect(judged({ result })).toMatchObject({
        verdict: { kind: 'wait', until: null },
        reasons: [{ kind: 'unsettled' }],
      });
    }
  });

  it('waits as long as the user says', () => {
    const check = checked(['heat'], { minutes: -31, own: false });
    expect(judged({ check }, { 'heat-minutes': 60 }).verdict.kind).toBe('wait');
  });
});

describe('water in the bowl', () => {
  it('means that the pan waits until it was wiped dry and looked at again', () => {
    expect(judged({ check: checked(['water']) })).toMatchObject({
      verdict: { kind: 'wait', until: null },
      reasons: [{ kind: 'look', look: 'water' }],
    });
  });
});

describe('what was seen', () => {
  it('and is dangerous or touches a note is put right first: sharp edges, skirt, hangers, stand', () => {
    const yes: readonly LookKind[] = ['sharp-edges', 'skirt', 'hangers', 'stand'];
    expect(judged({ check: checked(yes) })).toMatchObject({
      verdict: { kind: 'play' },
      first: yes,
    });
  });

  it('on the rim is only kept in mind', () => {
    expect(judged({ check: checked(['rim']) })).toMatchObject({ first: [], tell: ['rim'] });
  });

  it('means what the user wants it to mean', () => {
    const check = checked(['rim', 'heat']);
    const result = judged({ check }, { rim: 'do-not-play', heat: 'tell' });
    expect(result).toMatchObject({
      verdict: { kind: 'do-not-play' },
      reasons: [{ kind: 'look', look: 'rim' }],
      tell: ['heat'],
    });
  });
});

describe('a pan that nobody struck', () => {
  it('is struck first', () => {
    expect(judged({ result: null })).toMatchObject({
      verdict: { kind: 'strike-first' },
      reasons: [{ kind: 'not-struck', since: 'ever' }],
    });
  });

  it('since it was knocked is struck first, whatever an earlier round said', () => {
    const check = { ...checked([], { minutes: 5 }), round: roundId('still-open') };
    expect(judged({ check })).toMatchObject({
      verdict: { kind: 'strike-first' },
      reasons: [{ kind: 'not-struck', since: 'knock' }],
    });
  });

  it('on a good part of the notes that the set needs is struck first', () => {
    const half = resultSample(wholeLead(() => ({})).filter(({ note }) => note < 74));
    expect(judged({ result: half })).toMatchObject({
      verdict: { kind: 'strike-first' },
      reasons: [{ kind: 'not-struck', since: 'some' }],
    });
  });

  it('on a note or two is judged by the others, and those notes are named', () => {
    const most = resultSample(wholeLead(() => ({})).filter(({ note }) => note < 87));
    const result = judged({ result: most });
    expect(result.verdict).toEqual({ kind: 'play' });
    expect(result.notes.filter(({ isUnread }) => isUnread).map(({ note }) => note)).toEqual([
      87, 88,
    ]);
  });
});

describe('a note', () => {
  it('more than 30 cents from the pan as a whole is left out', () => {
    const result = judged({ result: lead({ F4: -35, 'F#5': 31, D5: 30 }, -4) });
    expect(result.verdict).toEqual({ kind: 'play-without', notes: [n('F4'), n('F#5')] });
    expect(noteOf(result, 'D5')?.action).toBe('in-passing');
  });

  it('that is right on the band is left out if the pan it belongs to is elsewhere', () => {
    expect(judged({ result: lead({ F4: 40 }, -40) }, { 'pan-swap': 60 }).verdict).toEqual({
      kind: 'play-without',
      notes: [n('F4')],
    });
  });

  it('more than 20 cents from the pan is played in passing, and does not change the verdict', () => {
    const result = judged({ result: lead({ F4: -21, G4: -20 }) });
    expect(result.verdict).toEqual({ kind: 'play' });
    expect([noteOf(result, 'F4')?.action, noteOf(result, 'G4')?.action]).toEqual([
      'in-passing',
      'play',
    ]);
  });

  it('whose octave lies more than 30 cents from it is played in passing', () => {
    const result = judged({ result: lead({ F4: { octave: 31 }, G4: { octave: -30 } }) });
    expect(noteOf(result, 'F4')?.reasons[0]?.kind).toBe('octave-off');
    expect(noteOf(result, 'G4')?.action).toBe('play');
  });

  it.each(['walking', 'choked', 'buzzing'] as const)('that is %s is left out', (sign) => {
    const result = judged({ signs: shown(sign, 'A4') });
    expect(result.verdict).toEqual({ kind: 'play-without', notes: [n('A4')] });
    expect(noteOf(result, 'A4')?.reasons).toEqual([{ kind: 'sign', sign }]);
  });

  it('that walks in its own reading is left out, signs or not', () => {
    const result = judged({ result: lead({ A4: { strikes: [0, -2, -4, -6, -8] } }) });
    expect(noteOf(result, 'A4')).toMatchObject({ action: 'avoid' });
    expect(noteOf(result, 'A4')?.reasons).toContainEqual({ kind: 'sign', sign: 'walking' });
  });

  it.each(['no-octave', 'new-doublet'] as const)('with %s is played in passing', (sign) => {
    const result = judged({ signs: shown(sign, 'A4') });
    expect(result.verdict.kind).toBe('play');
    expect(noteOf(result, 'A4')?.action).toBe('in-passing');
  });

  it('without its third partial is simply played', () => {
    expect(noteOf(judged({ signs: shown('no-third', 'A4') }), 'A4')?.action).toBe('play');
  });

  it.each(['dead', 'buzzing'] as const)('that somebody marked as %s is left out', (mark) => {
    const result = judged({ result: lead({}, 0, { marks: { 69: mark } }) });
    expect(result.verdict).toEqual({ kind: 'play-without', notes: [n('A4')] });
  });

  it('that the set does not need changes nothing, and is still shown as it is', () => {
    const result = judged({ result: lead({ 'F#4': -60 }), needed: inFAndBFlat });
    expect(result.verdict).toEqual({ kind: 'play' });
    expect(noteOf(result, 'F#4')).toMatchObject({ action: 'avoid', isNeeded: false });
  });

  it('is judged by what the user has set', () => {
    const changes: RuleChanges = { 'off-avoid': 50, 'off-in-passing': 50, buzzing: 'play' };
    const result = judged({ result: lead({ F4: -45 }), signs: shown('buzzing', 'A4') }, changes);
    expect(result.verdict).toEqual({ kind: 'play' });
    expect(result.notes.every(({ action }) => action === 'play')).toBe(true);
  });
});

describe('another pan is better', () => {
  it('when the pan as a whole lies more than 25 cents from the band', () => {
    expect(judged({ result: lead({}, -26) })).toMatchObject({
      verdict: { kind: 'swap' },
      reasons: [{ kind: 'pan-off' }],
      againstBand: { isHeard: true },
    });
    expect(judged({ result: lead({}, -25) })).toMatchObject({
      verdict: { kind: 'play' },
      againstBand: { isHeard: true },
    });
  });

  it('when more than a third of the notes that the set needs are to be left out', () => {
    const needed = new Set([pitchClassOf(n('C4')), pitchClassOf(n('F4'))]);
    // C4 C5 C6 F4 F5: two of five.
    const result = lead({ C4: -40, C5: -40 });
    expect(judged({ result, needed })).toMatchObject({
      verdict: { kind: 'swap' },
      reasons: [{ kind: 'many-left-out', count: 2, of: 5 }],
    });
    expect(judged({ result, needed }, { 'most-left-out': 40 }).verdict.kind).toBe('play-without');
  });

  it('when a note that the set needs is gone in every octave', () => {
    const result = lead({ F4: -40, F5: 45 });
    expect(judged({ result })).toMatchObject({
      verdict: { kind: 'swap' },
      reasons: [{ kind: 'note-lost', notes: [5] }],
    });
    expect(judged({ result }, { 'note-lost': 'play-without' }).verdict.kind).toBe('play-without');
  });
});

describe('a magnet', () => {
  const result = lead({ F4: 15, G4: 11, A4: -35, C5: 35, D5: 18 });

  it('is only worth a try under a note that has gone sharp and has nothing else', () => {
    const tonight = judged({ result, signs: shown('choked', 'D5') });
    const helped = tonight.notes.filter(({ magnet }) => magnet === 'helps').map(({ note }) => note);
    expect(helped).toEqual([n('F4'), n('C5')]);
  });

  it('that is on a note lets it be played in passing until somebody measures it', () => {
    const magnets = new Map([[n('C5'), instant(result.at + 60 * minute)]]);
    const tonight = judged({ result, magnets });
    expect(noteOf(tonight, 'C5')).toMatchObject({ magnet: 'on', action: 'in-passing' });
    // It was on already when the note was struck: what was heard counts.
    const before = new Map([[n('C5'), instant(result.at - minute)]]);
    expect(noteOf(judged({ result, magnets: before }), 'C5')).toMatchObject({
      magnet: 'on',
      action: 'avoid',
    });
  });

  it('does nothing for a flat note', () => {
    const magnets = new Map([[n('A4'), instant(result.at + minute)]]);
    expect(noteOf(judged({ result, magnets }), 'A4')?.action).toBe('avoid');
  });
});

describe('the dropped pan of the issue', () => {
  it('is played in F and B♭ without the two flat notes, the choked, the walking and the buzzing one', () => {
    const result = lead({ D4: -35, G5: -35 }, -4);
    const signs = new Map([
      ...shown('choked', 'A4'),
      ...shown('walking', 'C5'),
      ...shown('buzzing', 'Eb5'),
    ]);
    const tonight = judged({ check: checked(['rim']), result, signs, needed: inFAndBFlat });
    expect(tonight.verdict).toEqual({
      kind: 'play-without',
      notes: [n('D4'), n('A4'), n('C5'), n('Eb5'), n('G5')],
    });
    expect(tonight.againstBand?.isHeard).toBe(false);
  });
});
