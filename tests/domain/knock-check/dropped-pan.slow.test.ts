// From the sound of a dropped practice pan to what is said about tonight, through the whole ear, without a screen.
import { describe, expect, it } from 'vitest';
import { judgeTonight } from '../../../src/domain/knock-check/judge-tonight';
import { panDamageSigns } from '../../../src/domain/knock-check/pan-damage-signs';
import { pitchClassOf } from '../../../src/domain/knock-check/saved-tunes';
import { notesOfKey } from '../../../src/domain/knock-check/set-needs';
import { softOrder } from '../../../src/domain/knock-check/soft-order';
import { usualTonightRules } from '../../../src/domain/knock-check/tonight-rules';
import type { Strike } from '../../../src/domain/measurement/strike';
import { lowCLead } from '../../../src/domain/pans/layouts/low-c-lead';
import { strikesOf } from '../../../src/domain/reading/reading-values';
import { type ReadingRecord, recordId, roundOf } from '../../../src/domain/records/rack-records';
import { strikeRecordOf } from '../../../src/domain/records/strike-record';
import { beginRound, nextNote, strikeHeard } from '../../../src/domain/rounds/round-progress';
import { roundResult } from '../../../src/domain/rounds/round-result';
import { noteName, parseNote } from '../../../src/domain/tuning/note-names';
import { usualTolerances } from '../../../src/domain/tuning/tolerances';
import { cents, hertz, instant, type MidiNote, midiNote } from '../../../src/domain/tuning/units';
import { finallyHeard } from '../../dsp/listen-to';
import { type DroppedPan, droppedPracticePan, type Fall } from '../../sounds/dropped-practice-pan';
import { sampleReading } from '../../storage/rack/rack-sample';
import { startSample } from '../rounds/round-sample';

const sampleRate = 48_000;
const n = (name: string): MidiNote => parseNote(name) ?? midiNote(0);
const sorted = (notes: Iterable<MidiNote>) =>
  [...notes].sort((low, high) => low - high).map(noteName);

/** A whole guided round, each note struck until it is done; what the ear refuses is struck again. */
function struck(pan: DroppedPan, when: 'before' | 'now', order: readonly MidiNote[]) {
  let progress = beginRound('guided', order);
  const readings: ReadingRecord[] = [];
  const start = { ...startSample({ day: when === 'now' ? 1 : 0 }), order };
  const counts = new Map<MidiNote, number>();
  let strikes = 0;
  for (let note = nextNote(progress); note !== null && strikes < 500; note = nextNote(progress)) {
    const count = counts.get(note) ?? 0;
    counts.set(note, count + 1);
    const heard = hear(pan.strike(note, count, when), note, pan.notes);
    strikes++;
    if (!heard) continue;
    const step = strikeHeard(progress, { ...heard, event: strikes });
    progress = step.progress;
    if (step.event.kind !== 'locked') continue;
    readings.push({
      ...sampleReading(`${when}-${note}`, start, note),
      id: recordId(`${when}-${note}`),
      at: instant(start.at + strikes),
      strikes: step.event.reading.heard.map(strikeRecordOf),
    });
  }
  return { start, readings, strikes, of: strikesByNote(readings) };
}

function hear(sound: Float32Array, note: MidiNote, notes: readonly MidiNote[]): Strike | null {
  // The ear wants to have heard the room before the strike.
  const lead = Math.round(0.3 * sampleRate);
  const whole = new Float32Array(lead + sound.length + Math.round(0.2 * sampleRate));
  whole.set(sound, lead);
  for (let k = 0; k < whole.length; k++) whole[k] = (whole[k] ?? 0) + 1e-4 * Math.sin(k * k);
  const context = { a4: hertz(440), expected: note, notes };
  return (
    finallyHeard(whole, sampleRate, context).find(
      (heard): heard is Strike => heard.kind === 'strike',
    ) ?? null
  );
}

const strikesByNote = (
  readings: readonly ReadingRecord[],
): ReadonlyMap<MidiNote, readonly Strike[]> =>
  new Map(
    readings.map((reading) => [
      reading.note,
      strikesOf(reading, { a4: hertz(440), offset: cents(0) }),
    ]),
  );

function tonight(fall: Fall, seed: number, yes: 'rim' | 'heat' = 'rim') {
  const pan = droppedPracticePan(seed, fall, { sampleRate, loudness: 0.35 });
  const impact = { kind: 'point', drum: 0, clock: 4.5, radius: 0.95 } as const;
  const before = struck(pan, 'before', pan.notes);
  const now = struck(pan, 'now', softOrder(lowCLead, impact));
  const signs = panDamageSigns({ layout: lowCLead, strikes: now.of, before: before.of });
  const result = roundResult(
    {
      start: now.start,
      readings: now.readings,
      marks: new Map(),
      layout: lowCLead,
      a4: hertz(440),
    },
    { limits: usualTolerances, reference: 'band' },
  );
  const judged = judgeTonight(
    {
      layout: lowCLead,
      check: {
        kind: 'knock-check',
        shape: 1,
        id: recordId('check'),
        pan: now.start.pan,
        at: now.start.at,
        round: roundOf(now.start),
        looks: [{ look: yes, answer: 'yes', photo: null }],
        impact,
        remarks: '',
      },
      result,
      cracked: [],
      signs,
      magnets: new Map(),
      needed: new Set(['F4', 'Bb4'].flatMap((name) => notesOfKey(pitchClassOf(n(name))))),
    },
    usualTonightRules,
  );
  return { judged, signs, now };
}

describe('the dropped practice pan of the issue', () => {
  const { judged, signs, now } = tonight(
    {
      shift: -4,
      moved: { [n('D4')]: -35, [n('G4')]: -35 },
      choked: [n('A4')],
      walking: { [n('C5')]: -4 },
      buzzing: [n('Eb5')],
    },
    41,
  );

  it('is heard with its three damaged notes and no other', () => {
    expect(
      Object.fromEntries(
        [...signs].map(([note, all]) => [noteName(note), all.map(({ kind }) => kind)]),
      ),
    ).toEqual({
      A4: expect.arrayContaining(['choked']),
      C5: ['walking'],
      Eb5: ['buzzing'],
    });
  });

  it('is played in F and B♭ without the five notes that were planted', () => {
    const { verdict } = judged;
    expect(verdict.kind).toBe('play-without');
    expect(verdict.kind === 'play-without' && sorted(verdict.notes)).toEqual([
      'D4',
      'G4',
      'A4',
      'C5',
      'Eb5',
    ]);
    expect(Math.abs((judged.againstBand?.cents ?? 0) + 4)).toBeLessThan(1);
  });

  it('takes few enough strikes for five minutes', () => {
    // Three strikes settle a note; a strike every two seconds is slow.
    expect(now.strikes).toBeLessThan(110);
  });
});

describe('a pan that only shifted as a whole', () => {
  it('is simply played', () => {
    const { judged, signs } = tonight(
      { shift: -9, moved: {}, choked: [], walking: {}, buzzing: [] },
      43,
    );
    expect(judged.verdict).toEqual({ kind: 'play' });
    expect([...signs]).toEqual([]);
  });
});
