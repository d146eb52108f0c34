// Rows on general-purpose detectors beside the app.
import { detectorErrors, errorsOnStretchedNotes } from '../../ear-scenes/compare-detectors';
import { generalDetectors } from '../../ear-scenes/general-detectors';
import { errorsOf, type HeardScene } from '../../ear-scenes/hear-scene';
import { median, rms } from '../../ear-scenes/statistics';
import type { Row } from './print-table';

const leastRatio = 30;
/** Errors beyond this are another note, not a blend, cents. */
const anotherNote = 50;

export async function detectorRows(guided: readonly HeardScene[]): Promise<readonly Row[]> {
  const detectors = await generalDetectors();
  // All are judged on the scenes that the app measured.
  const measured = guided.filter((each) => errorsOf(each).fundamental !== null);
  const scenes = measured.map(({ scene }) => scene);
  const own = measured.flatMap((each) => errorsOf(each).fundamental ?? []);
  const ownRms = rms(own.map(({ error }) => error));
  const rows = detectors.map((detector): Row => {
    const { name, errors, missing } = detectorErrors(detector, scenes);
    const near = errors.filter((error) => Math.abs(error) < anotherNote);
    const nearRatio = rms(near) / ownRms;
    return {
      quantity: `same scenes, ${name}: RMS against ours`,
      target: `>= ${leastRatio} x`,
      measured: [
        `${(rms(errors) / ownRms).toFixed(0)} x`,
        `RMS ${rms(errors).toFixed(1)}, median ${median(errors.map(Math.abs)).toFixed(2)} cents`,
        `no pitch in ${missing}`,
        `without the ${errors.length - near.length} beyond ${anotherNote} cents ${nearRatio.toFixed(0)} x`,
        `ours ${ownRms.toFixed(3)} cent on these ${scenes.length} scenes`,
      ].join('; '),
      isMet: rms(errors) / ownRms >= leastRatio,
    };
  });
  const stretches = [
    { octave: 15, twelfth: -12 },
    { octave: -20, twelfth: 20 },
  ].map((stretch): Row => {
    const { detectors: theirs, app } = errorsOnStretchedNotes(stretch, detectors);
    return {
      quantity: `note with octave ${stretch.octave}, twelfth ${stretch.twelfth} cents`,
      target: '',
      measured: `mean error of the fundamental ${theirs.map((each) => each.toFixed(1)).join(', ')} cents; ours ${app.toFixed(3)} cent`,
      isMet: null,
    };
  });
  return [...rows, ...stretches];
}
