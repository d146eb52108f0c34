// What is measured of a rack of one size, and the folder in which it stays from one run to the next.
import { existsSync, mkdirSync, readFileSync, writeFileSync } from 'node:fs';
import { loadavg } from 'node:os';
import { join } from 'node:path';
import type { PeakMemory } from './page-memory';
import type { AppTimes } from './time-app';

export const phases = ['fill', 'open', 'export', 'import'] as const;
export type Phase = (typeof phases)[number];

export interface Openings {
  /** Milliseconds, one a start of the browser. */
  readonly copy: readonly number[];
  readonly rack: readonly number[];
  readonly app: readonly AppTimes[];
  readonly pan: readonly number[];
  readonly note: readonly number[];
  /** How many processes wanted the machine meanwhile, ours among them: the mean of a minute (getloadavg(3)). */
  readonly load: number;
}

/** A phase that has not been run yet has left nothing. */
export interface RackFigures {
  readonly filled?: {
    readonly pans: number;
    readonly seconds: number;
    /** What the browser says the database takes on the disk. */
    readonly storedBytes: number;
  };
  readonly opened?: Openings;
  readonly exported?: {
    readonly seconds: number;
    readonly records: number;
    readonly fileBytes: number;
    readonly peak: PeakMemory;
    readonly before: PeakMemory;
  };
  readonly imported?: {
    readonly checkSeconds: number;
    readonly seconds: number;
    readonly peak: PeakMemory;
    readonly before: PeakMemory;
  };
}

/** The folder of one rack: the browser's profile and the figures. */
export class RackFolder {
  readonly profile: string;
  readonly #file: string;

  constructor(parent: string, pans: number) {
    const folder = join(parent, `${pans}-pans`);
    mkdirSync(folder, { recursive: true });
    this.profile = join(folder, 'profile');
    this.#file = join(folder, 'figures.json');
  }

  get figures(): RackFigures {
    return existsSync(this.#file)
      ? (JSON.parse(readFileSync(this.#file, 'utf8')) as RackFigures)
      : {};
  }

  add(figures: RackFigures): void {
    writeFileSync(this.#file, JSON.stringify({ ...this.figures, ...figures }, null, 2));
  }
}

/** See `Openings.load`. */
export const machineLoad = (): number => loadavg()[0] ?? Number.NaN;
