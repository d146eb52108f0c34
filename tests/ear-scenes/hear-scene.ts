// Plays a scene to the whole ear and sets what it says against the scene's truth.
import type { Heard, ListeningContext, Strike } from '../../src/domain/measurement/strike';
import { centsBetween, type MidiNote, midiNote } from '../../src/domain/tuning/units';
import { anyNote, finallyHeard } from '../dsp/listen-to';
import type { Scene } from '../sounds/scene';

/** The notes of a lead, C4 to E6, as `strikeScene` strikes them. */
export const panNotes: readonly MidiNote[] = Array.from({ length: 29 }, (_, n) => midiNote(60 + n));

/** The pan's notes as candidates, no hint. */
export const panOnly: ListeningContext = { ...anyNote, notes: panNotes };

/** The guided order: the pan's notes, and the one that is to be struck. */
export const guidedTo = (note: number): ListeningContext => ({
  ...panOnly,
  expected: midiNote(note),
});

/** How far an onset may lie from the strike to be its own, s. */
const nearOnset = 0.1;

/** The settled word on the scene's strike; null if nothing was heard there. */
export const hearScene = (scene: Scene, context: ListeningContext): Heard | null =>
  hearWhole(scene, context).heard;

function hearWhole(scene: Scene, context: ListeningContext): HeardScene {
  const all = finallyHeard(scene.samples, scene.sampleRate, context);
  const near = all.filter((each) => Math.abs(each.at - scene.truth.at) < nearOnset);
  const heard = near.find((each) => each.kind === 'strike') ?? near[0] ?? null;
  const others = all.filter((each) => each !== heard);
  const strikes = others.filter((each) => each.kind === 'strike').length;
  return { scene, heard, elsewhere: { strikes, refusals: others.length - strikes } };
}

/** A scene with what was heard of it. */
export interface HeardScene {
  readonly scene: Scene;
  readonly heard: Heard | null;
  /** What else was said, though there was nothing else: strikes, and knocks or refusals. */
  readonly elsewhere: { readonly strikes: number; readonly refusals: number };
}

export const hearAll = (
  scenes: readonly Scene[],
  contextOf: (scene: Scene) => ListeningContext,
): readonly HeardScene[] => scenes.map((scene) => hearWhole(scene, contextOf(scene)));

/** Error against the settled truth and stated standard error, cents. */
export interface PartialError {
  readonly error: number;
  readonly sigma: number;
}

export interface StrikeErrors {
  readonly fundamental: PartialError | null;
  readonly octave: PartialError | null;
  /** Only where the third that was reported is the one that is there. */
  readonly third: PartialError | null;
}

/** The errors of the partials of what was heard; all null where it was no strike on the right note. */
export function errorsOf({ scene, heard }: Omit<HeardScene, 'elsewhere'>): StrikeErrors {
  const { truth } = scene;
  if (heard?.kind !== 'strike' || heard.note !== truth.note) {
    return { fundamental: null, octave: null, third: null };
  }
  return {
    fundamental: errorOf(truth.fundamental.hz, heard.fundamental),
    octave: heard.octave && errorOf(truth.octave.hz, heard.octave),
    third:
      truth.third && heard.third?.kind === truth.thirdKind
        ? errorOf(truth.third.hz, heard.third)
        : null,
  };
}

const errorOf = (
  truthHz: number,
  measured: Pick<Strike['fundamental'], 'hz' | 'sigmaCents'>,
): PartialError => ({ error: centsBetween(truthHz, measured.hz), sigma: measured.sigmaCents });
