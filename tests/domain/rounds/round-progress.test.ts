import { describe, expect, it } from 'vitest';
import type { RoundWay } from '../../../src/domain/records/rack-records';
import { resumeRound } from '../../../src/domain/rounds/resume-round';
import {
  beginRound,
  isDone,
  isFinished,
  listeningBegan,
  markNote,
  nextNote,
  noteChosen,
  notesLeft,
  patience,
  type RoundProgress,
  type RoundStep,
  strikeHeard,
} from '../../../src/domain/rounds/round-progress';
import { type MidiNote, midiNote } from '../../../src/domain/tuning/units';
import * as fc from '../../properties';
import { type StrikeSketch, strikeSample } from '../reading/strike-sample';

const order = [76, 64, 74, 62].map(midiNote);
const [e5, e4, d5, d4] = order as [MidiNote, MidiNote, MidiNote, MidiNote];

/** Strikes one after the other, numbered on from the last one; all steps. */
function strikes(start: RoundProgress, ...sketches: StrikeSketch[]): readonly RoundStep[] {
  const steps: RoundStep[] = [];
  let progress = start;
  for (const sketch of sketches) {
    const event = progress.lastEvent - progress.eventsBefore + 1;
    const step = strikeHeard(progress, strikeSample({ event, ...sketch }));
    steps.push(step);
    progress = step.progress;
  }
  return steps;
}
const lastOf = (steps: readonly RoundStep[]): RoundStep => {
  const last = steps.at(-1);
  if (!last) throw new Error('no step');
  return last;
};
const progressAfter = (start: RoundProgress, ...sketches: StrikeSketch[]) =>
  lastOf(strikes(start, ...sketches)).progress;
const three = (note: MidiNote, fundamental = 0): StrikeSketch[] =>
  [0, 0.1, -0.1].map((by) => ({ note, fundamental: fundamental + by }));

describe('a guided round', () => {
  const begun = beginRound('guided', order);

  it('asks for the notes in their order, and locks each after three agreeing strikes', () => {
    expect(nextNote(begun)).toBe(e5);
    const steps = strikes(begun, ...three(e5));
    expect(steps.map(({ event }) => event.kind)).toEqual(['counted', 'counted', 'locked']);
    expect(lastOf(steps).announce).toEqual({ kind: 'next', note: e4 });
    expect(nextNote(lastOf(steps).progress)).toBe(e4);
    expect(isDone(lastOf(steps).progress, e5)).toBe(true);
  });

  it('moves on after three agreeing strikes of a note whose fundamental is only inferred', () => {
    const inferred = three(e5).map((sketch) => ({ ...sketch, isInferred: true }));
    const steps = strikes(begun, ...inferred);
    expect(steps.map(({ event }) => event.kind)).toEqual(['counted', 'counted', 'locked']);
    expect(lastOf(steps).event).toMatchObject({ reading: { isInferred: true, settled: true } });
  });

  it('is finished after the last note, and says so once', () => {
    const steps = strikes(begun, ...order.flatMap((note) => three(note)));
    const said = steps.flatMap(({ announce }) => (announce ? [announce.kind] : []));
    expect(said).toEqual(['next', 'next', 'next', 'finished']);
    expect(isFinished(lastOf(steps).progress)).toBe(true);
    expect(nextNote(lastOf(steps).progress)).toBeNull();
  });

  it('takes no other note than the one it asks for', () => {
    const step = lastOf(strikes(begun, { note: d5 }));
    expect(step.event).toEqual({ kind: 'ignored', why: 'other-note' });
    expect(step.progress).toBe(begun);
  });

  it('says when a strike contradicts those before it', () => {
    const { event } = lastOf(strikes(begun, { note: e5 }, { note: e5, fundamental: 9 }));
    expect(event).toMatchObject({ kind: 'counted', isAgreeing: false });
  });

  it('does not count first looks, and no strike twice', () => {
    const look = strikeHeard(begun, strikeSample({ note: e5, provisional: true }));
    expect(look.event).toEqual({ kind: 'ignored', why: 'first-look' });
    const one = strikeHeard(look.progress, strikeSample({ note: e5 }));
    expect(one.event.kind).toBe('counted');
    const again = strikeHeard(one.progress, strikeSample({ note: e5 }));
    expect(again.event).toEqual({ kind: 'ignored', why: 'heard-before' });
  });

  it('counts on when listening begins anew and numbers its strikes from 1 again', () => {
    const two = progressAfter(begun, { note: e5 }, { note: e5 });
    const step = strikeHeard(listeningBegan(two), strikeSample({ event: 1, note: e5 }));
    expect(step.event.kind).toBe('locked');
  });

  it.each(['dead', 'buzzing', 'cracked', 'skipped'] as const)(
    'goes on after a note is marked %s',
    (mark) => {
      const step = markNote(begun, e5, mark);
      expect(step.announce).toEqual({ kind: 'next', note: e4 });
      expect(isDone(step.progress, e5)).toBe(true);
      const back = markNote(step.progress, e5, 'none');
      expect(nextNote(back.progress)).toBe(e5);
      expect(back.announce).toBeNull();
    },
  );

  it('measures a note again that the user picks, then goes on where it was', () => {
    const first = progressAfter(begun, ...three(e5));
    const chosen = noteChosen(first, e5);
    expect(nextNote(chosen)).toBe(e5);
    expect(isDone(chosen, e5)).toBe(true);
    const steps = strikes(chosen, ...three(e5, -7));
    expect(lastOf(steps).event).toMatchObject({ kind: 'locked', note: e5 });
    expect(lastOf(steps).announce).toEqual({ kind: 'next', note: e4 });
  });

  it('begins a picked note anew, and forgets the pick when told', () => {
    const two = progressAfter(begun, { note: e5 }, { note: e5 });
    expect(lastOf(strikes(noteChosen(two, e5), { note: e5 })).event.kind).toBe('counted');
    expect(nextNote(noteChosen(noteChosen(begun, d4), null))).toBe(e5);
    expect(nextNote(noteChosen(begun, midiNote(40)))).toBe(e5);
  });

  it('waits for a fourth strike when three go one way, and locks when it does not go on', () => {
    const threeDown = [0, -0.6, -1.2].map((fundamental) => ({ note: e5, fundamental }));
    const steps = strikes(begun, ...threeDown, { note: e5, fundamental: -0.8 });
    expect(steps.map(({ event }) => event.kind)).toEqual([...Array(3).fill('counted'), 'locked']);
  });

  it('does not wait for ever for a note that never settles', () => {
    const scattered = [0, 9, -9, 18, -18, 27, -27].map((fundamental) => ({
      note: e5,
      fundamental,
    }));
    const steps = strikes(begun, ...scattered);
    expect(scattered).toHaveLength(patience);
    expect(lastOf(steps).event).toMatchObject({
      kind: 'locked',
      reading: { settled: false, walking: null },
    });
    expect(steps.filter(({ event }) => event.kind === 'locked')).toHaveLength(1);
  });

  it('has a note that walks struck no more than it takes to be sure of the walk', () => {
    const walk = Array.from({ length: 4 }, (_, k) => ({ note: e5, fundamental: -2 * k }));
    const steps = strikes(begun, ...walk);
    expect(steps.map(({ event }) => event.kind)).toEqual([...Array(3).fill('counted'), 'locked']);
    expect(lastOf(steps).event).toMatchObject({
      reading: { settled: false, walking: { centsPerStrike: -2 } },
    });
  });
});

describe('a free round', () => {
  const begun = beginRound('free', order);

  it('expects no note, takes them in any order, also in turns', () => {
    expect(nextNote(begun)).toBeNull();
    const turns = [0, 1, 2].flatMap(() => [{ note: d4 }, { note: e5 }]);
    const kinds = strikes(begun, ...turns).map(({ event, announce }) => [
      event.kind,
      announce?.kind,
    ]);
    expect(kinds.slice(-2)).toEqual([
      ['locked', 'taken'],
      ['locked', 'taken'],
    ]);
  });

  it('does not take a note that the round does not have', () => {
    expect(lastOf(strikes(begun, { note: 90 })).event.kind).toBe('ignored');
  });

  it('measures a note that is done again when it is struck again', () => {
    const steps = strikes(progressAfter(begun, ...three(e5)), ...three(e5, 4));
    expect(steps.map(({ event }) => event.kind)).toEqual(['counted', 'counted', 'locked']);
  });
});

describe('a quick round', () => {
  const begun = beginRound('quick', order);

  it('is done with a note after one strike, and finished after one strike each', () => {
    expect(nextNote(begun)).toBeNull();
    const steps = strikes(begun, ...[d5, e5, d4, e4].map((note) => ({ note })));
    expect(steps.map(({ event }) => event.kind)).toEqual(Array(4).fill('locked'));
    expect(steps.map(({ announce }) => announce?.kind)).toEqual([
      'taken',
      'taken',
      'taken',
      'finished',
    ]);
  });

  it('refines a note by later strikes, whatever was struck between', () => {
    const steps = strikes(
      begun,
      { note: d5, fundamental: 2 },
      { note: e5 },
      { note: d5, fundamental: 3 },
    );
    const { event, announce } = lastOf(steps);
    expect(event).toMatchObject({ kind: 'refined', note: d5, reading: { strikes: { length: 2 } } });
    expect(event.kind === 'refined' && event.reading.fundamental.cents).toBeCloseTo(2.5, 9);
    expect(announce).toBeNull();
  });
});

describe('an interrupted round', () => {
  const kept = { order, marks: [{ note: e4, mark: 'dead' as const }] };

  it('goes on with the first note that is neither read nor marked', () => {
    const readings = [{ note: e5, strikes: [strikeSample({ note: 76 })] }];
    const resumed = resumeRound({ ...kept, way: 'guided', readings });
    expect(notesLeft(resumed)).toEqual([d5, d4]);
    expect(nextNote(resumed)).toBe(d5);
    expect(lastOf(strikes(resumed, ...three(d5))).event.kind).toBe('locked');
  });

  it('refines what was kept of a quick round', () => {
    const readings = [{ note: e5, strikes: [strikeSample({ note: 76, fundamental: 2 })] }];
    const resumed = resumeRound({ ...kept, way: 'quick', readings });
    const { event } = lastOf(strikes(resumed, { note: e5, fundamental: 3 }));
    expect(event).toMatchObject({ kind: 'refined', reading: { heard: { length: 2 } } });
  });

  it('ignores what was kept of notes it does not have', () => {
    const readings = [{ note: midiNote(40), strikes: [] }];
    expect(notesLeft(resumeRound({ order, marks: [], way: 'free', readings }))).toEqual(order);
  });

  it('stands where it stood, whatever was done before it was interrupted', () => {
    const action = fc.oneof(
      fc.record({ kind: fc.constant('strike' as const), note: fc.constantFrom(...order) }),
      fc.record({
        kind: fc.constant('mark' as const),
        note: fc.constantFrom(...order),
        mark: fc.constantFrom('dead' as const, 'skipped' as const, 'none' as const),
      }),
      fc.record({ kind: fc.constant('choose' as const), note: fc.constantFrom(...order) }),
    );
    const way = fc.constantFrom<RoundWay>('guided', 'free', 'quick');
    fc.assert(
      fc.property(way, fc.array(action, { maxLength: 60 }), (chosenWay, actions) => {
        let progress = beginRound(chosenWay, order);
        const readings: { note: MidiNote; strikes: ReturnType<typeof strikeSample>[] }[] = [];
        const marks = new Map<MidiNote, 'dead' | 'skipped' | 'none'>();
        for (const each of actions) {
          if (each.kind === 'choose') {
            progress = noteChosen(progress, each.note);
            continue;
          }
          const step =
            each.kind === 'mark'
              ? markNote(progress, each.note, each.mark)
              : lastOf(strikes(progress, { note: each.note }));
          progress = step.progress;
          const { event } = step;
          if (event.kind === 'locked' || event.kind === 'refined') {
            readings.push({ note: event.note, strikes: [...event.reading.strikes] });
          }
          if (each.kind === 'mark') marks.set(each.note, each.mark);
          expect(step.announce?.kind === 'finished').toBe(
            step.announce !== null && isFinished(progress),
          );
        }
        const resumed = resumeRound({
          way: chosenWay,
          order,
          readings,
          marks: [...marks].map(([note, mark]) => ({ note, mark })),
        });
        expect(notesLeft(resumed)).toEqual(notesLeft(progress));
        expect(nextNote(resumed)).toBe(nextNote(noteChosen(progress, null)));
      }),
    );
  });
});
