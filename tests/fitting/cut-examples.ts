// The cut sounds of all examples, kept in the machine's temporary folder: making them takes longer than fitting.
import {
  closeSync,
  existsSync,
  mkdirSync,
  openSync,
  readFileSync,
  readSync,
  writeFileSync,
  writeSync,
} from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { cutStrikes } from './cut-strikes';
import type { Example } from './strike-data';

export interface CutExample {
  readonly sampleRate: number;
  /** Samples of the segment; they begin at `from` in the file of the kind. */
  readonly count: number;
  readonly from: number;
  /** Fundamental of the strike, Hz; null for no strike. */
  readonly hz: number | null;
  readonly note: string;
  readonly strength: string;
  readonly kind: string;
}

/** A strike is that of the onset nearest to it within this, s. */
const near = 0.06;
/** An onset this near to a strike belongs to it, s. */
const apart = 0.12;

const folder = join(tmpdir(), 'ringwright-fit-ear');
const indexOf = (name: string): string => join(folder, `${name}.json`);
const soundsOf = (name: string): string => join(folder, `${name}.bin`);

/** Whether the cuts of `name` are there and may be taken again. */
export const isCut = (name: string): boolean => existsSync(indexOf(name)) && !process.env['FRESH'];

/** Cuts `examples` once; their list is read from the temporary folder where it is there and `FRESH` is not set. */
export function cutExamples(
  name: string,
  examples: () => Iterable<Example>,
): readonly CutExample[] {
  if (isCut(name)) {
    return JSON.parse(readFileSync(indexOf(name), 'utf8')) as readonly CutExample[];
  }
  mkdirSync(folder, { recursive: true });
  const file = openSync(soundsOf(name), 'w');
  const cuts: CutExample[] = [];
  let from = 0;
  let unheard = 0;
  for (const { sound, strike, leftOut = [], note, strength, kind } of examples()) {
    const all = cutStrikes(sound);
    const own = strike
      ? all
          .filter((cut) => Math.abs(cut.at - strike.at) < near)
          .sort((a, b) => Math.abs(a.at - strike.at) - Math.abs(b.at - strike.at))
          .slice(0, 1)
      : all.filter(({ at }) => !leftOut.some((time) => Math.abs(at - time) < apart));
    if (strike && own.length === 0) unheard++;
    for (const { segment } of own) {
      writeSync(file, Buffer.from(segment.buffer, segment.byteOffset, segment.byteLength));
      cuts.push({
        sampleRate: sound.sampleRate,
        count: segment.length,
        from,
        hz: strike?.hz ?? null,
        note,
        strength,
        kind,
      });
      from += segment.length;
    }
  }
  closeSync(file);
  writeFileSync(indexOf(name), JSON.stringify(cuts));
  process.stdout.write(
    `${name}: ${cuts.length} sounds cut, ${unheard} strikes without an onset of their own\n`,
  );
  return cuts;
}

/** The sounds of the cuts of `name`, one after another in one array. */
export function eachSegment(
  name: string,
  cuts: readonly CutExample[],
  take: (cut: CutExample, segment: Float32Array) => void,
): void {
  const file = openSync(soundsOf(name), 'r');
  for (const cut of cuts) {
    const bytes = Buffer.alloc(4 * cut.count);
    readSync(file, bytes, 0, bytes.length, 4 * cut.from);
    take(cut, new Float32Array(new Uint8Array(bytes).buffer));
  }
  closeSync(file);
}
