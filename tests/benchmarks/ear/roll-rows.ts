// Rows on rolls: too fast to be measured, so that nothing may be taken from their middle.
import type { Heard } from '../../../src/domain/measurement/strike';
import { finallyHeard } from '../../dsp/listen-to';
import { panNotes, panOnly } from '../../ear-scenes/hear-scene';
import { seedsFrom } from '../../ear-scenes/seeds';
import { playedLead } from '../../sounds/played-lead';
import { playedPracticePan } from '../../sounds/played-practice-pan';
import { type Roll, rollOf, rollOfRecordings } from '../../sounds/rolls';
import { realStrikes } from '../../synthetic-sounds/real-strike';
import type { Row } from './print-table';

const sampleRate = 48000;
/** The last stroke rings out alone and may be measured, s. */
const beforeLast = 0.03;

export async function rollRows(): Promise<readonly Row[]> {
  const recordings = await realStrikes();
  return [
    rowOf('the practice pan', ({ seed, strokes }) => playedPracticePan(seed, strokes, sampleRate)),
    rowOf('real recordings', (roll) => rollOfRecordings(roll, recordings, sampleRate)),
    rowOf('a lead as hard as a scene, no stick noise', ({ seed, strokes }) => {
      return playedLead(seed, strokes, { sampleRate }).samples;
    }),
  ];
}

function rowOf(name: string, play: (roll: Roll) => Float32Array): Row {
  const rolls = seedsFrom(1, 60).map((seed) => {
    const roll = rollOf(seed, panNotes);
    const heard = finallyHeard(play(roll), sampleRate, panOnly);
    const last = (roll.strokes.at(-1)?.at ?? 0) - beforeLast;
    const isTooFast = (each: Heard): boolean =>
      each.kind === 'refused' && each.reason === 'too-fast';
    return {
      isSaid: heard.some(isTooFast),
      isTaken: heard.some((each) => each.kind === 'strike' && each.at < last),
    };
  });
  const said = rolls.filter(({ isSaid }) => isSaid).length;
  const taken = rolls.filter(({ isTaken }) => isTaken).length;
  return {
    quantity: `rolls, strikes taken from their middle: ${name}`,
    target: 'none',
    measured: `${taken} of ${rolls.length} rolls; ${said} called too fast`,
    isMet: taken === 0,
  };
}
