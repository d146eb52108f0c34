// Real strikes with an independent analysis of each: from the folder in STRIKES, else ../shared/strikes. The
// recordings are no part of the project.
import { existsSync, readdirSync, readFileSync } from 'node:fs';
import { dirname, join, resolve } from 'node:path';
import { fileURLToPath } from 'node:url';
import { readWav } from '../../../src/dsp/read-wav';

/** A damped line as the independent analysis has it; a negative time constant grows. */
export interface AnalysedLine {
  readonly hz: number;
  readonly decaySeconds: number;
  /** Share of energy against the strongest line, 0…1. */
  readonly share: number;
}

export interface AnalysedPartial {
  /** Frequency by the phase slope over three windows (s after the onset), Hz. */
  readonly hzSlope: Readonly<Record<string, number | null>>;
  /** Peak of a Hann spectrum, 0.1 to 0.6 s, Hz. */
  readonly hzHann: number | null;
  readonly decaySeconds: number | null;
  readonly levelDb: number | null;
  readonly lines: readonly AnalysedLine[] | null;
}

/** What `strikes.json` says of one recording. */
export interface Analysis {
  readonly file: string;
  readonly note: string;
  readonly midi: number;
  /** 1 softest to 4 hardest; 3a lies between. */
  readonly dynamic: string;
  readonly take: number;
  readonly f1: AnalysedPartial | null;
  readonly f2: AnalysedPartial | null;
  readonly f3: AnalysedPartial | null;
  readonly f4: AnalysedPartial | null;
}

export interface RealTake extends Analysis {
  readonly samples: Float32Array<ArrayBuffer>;
  readonly sampleRate: number;
}

const projectFolder = join(dirname(fileURLToPath(import.meta.url)), '..', '..', '..');

export const takesFolder = (): string =>
  resolve(projectFolder, process.env['STRIKES'] ?? '../shared/strikes');

export const missingTakes = (): string =>
  `There are no real strikes in ${takesFolder()}: name their folder (strikes.json and its WAV files) in STRIKES.`;

/** All recordings, in the order of `strikes.json`; null where the folder is not there (`missingTakes` says so). */
export function realTakes(): readonly RealTake[] | null {
  const folder = takesFolder();
  const list = join(folder, 'strikes.json');
  if (!existsSync(list)) return null;
  const there = new Set(readdirSync(folder));
  const analyses = JSON.parse(readFileSync(list, 'utf8')) as readonly Analysis[];
  return analyses.flatMap((analysis) => {
    if (!there.has(analysis.file)) return [];
    const wav = readWav(new Uint8Array(readFileSync(join(folder, analysis.file))).buffer);
    if (wav.kind === 'not-wav') throw new Error(`${analysis.file}: ${wav.why}`);
    return [{ ...analysis, samples: wav.samples, sampleRate: wav.sampleRate }];
  });
}
