// General-purpose pitch detectors, for comparison: each gives one pitch for a stretch of sound.
import aubio from 'aubiojs';
import { YIN } from 'pitchfinder';
import { PitchDetector } from 'pitchy';
import { median } from './statistics';

export interface GeneralDetector {
  readonly name: string;
  /** Median over frames, Hz; null where it finds no pitch. */
  readonly pitch: (steady: Float32Array, sampleRate: number) => number | null;
}

const frame = 4096;
const hop = 2048;

export async function generalDetectors(): Promise<readonly GeneralDetector[]> {
  const { Pitch } = await aubio();
  // Its memory is never given back: one detector for each rate.
  const ofRate = new Map<number, InstanceType<typeof Pitch>>();
  const mcLeod = PitchDetector.forFloat32Array(frame);
  return [
    {
      name: 'McLeod (pitchy)',
      pitch: (steady, sampleRate) =>
        medianOf(framesOf(steady).map((each) => mcLeod.findPitch(each, sampleRate)[0])),
    },
    {
      name: 'YIN (pitchfinder)',
      pitch: (steady, sampleRate) => medianOf(framesOf(steady).map(YIN({ sampleRate }))),
    },
    {
      name: 'yinfft (aubiojs)',
      pitch: (steady, sampleRate) => {
        const detector = ofRate.get(sampleRate) ?? new Pitch('yinfft', frame, hop, sampleRate);
        ofRate.set(sampleRate, detector);
        const pitches: number[] = [];
        for (let from = 0; from + hop <= steady.length; from += hop) {
          pitches.push(detector.do(steady.slice(from, from + hop)));
        }
        // The first one still holds the end of the sound before.
        return medianOf(pitches.slice(1));
      },
    },
  ];
}

function framesOf(steady: Float32Array): Float32Array<ArrayBuffer>[] {
  const frames: Float32Array<ArrayBuffer>[] = [];
  for (let from = 0; from + frame <= steady.length; from += hop) {
    frames.push(new Float32Array(steady.slice(from, from + frame)));
  }
  return frames;
}

function medianOf(pitches: readonly (number | null)[]): number | null {
  const found = pitches.filter((hz): hz is number => hz !== null && hz > 0);
  return found.length === 0 ? null : median(found);
}

/** Error in cents against the nearest octave of the truth: in the detector's favour. */
export function foldedError(truthHz: number, hz: number): number {
  const octaves = Math.log2(hz / truthHz);
  return 1200 * (octaves - Math.round(octaves));
}
