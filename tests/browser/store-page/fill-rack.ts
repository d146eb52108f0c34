// Fills the rack with invented pans of invented readings, through the store itself.

import { notesOf } from '../../../src/domain/pans/layout';
import { lowCLead } from '../../../src/domain/pans/layouts/low-c-lead';
import type { PanStore } from '../../../src/domain/ports/pan-store';
import {
  type PanId,
  panId,
  type RackRecord,
  type ReadingRecord,
  type RoundStart,
  recordId,
  roundId,
  roundOf,
} from '../../../src/domain/records/rack-records';
import type { StrikeRecord } from '../../../src/domain/records/strike-record';
import { frequencyOf } from '../../../src/domain/tuning/equal-temperament';
import {
  cents,
  decibels,
  hertz,
  instant,
  type MidiNote,
  seconds,
  shiftedBy,
} from '../../../src/domain/tuning/units';
import { between, gaussianFrom, seededRandom } from '../../../src/practice-pan/seeded-random';
import * as samples from '../../storage/rack/rack-sample';

export const strikesOfReading = 3;
export const notes = notesOf(lowCLead);
const roundsAtOnce = 10;
const week = 7 * 24 * 3600 * 1000;

export const rackPan = (pan: number): PanId => panId(`pan-${pan}`);
export const rackRound = (pan: number, round: number) => roundId(nameOf('round', pan, round));

/** Names without any order, as the ones of real records. */
function nameOf(kind: string, ...numbers: readonly number[]): string {
  const text = `${kind}:${numbers.join(':')}`;
  let hash = 2166136261;
  // FNV-1a (Fowler, Noll, Vo), 32 bits; from memory.
  for (const letter of text) hash = Math.imul(hash ^ letter.charCodeAt(0), 16777619) >>> 0;
  return `${hash.toString(16).padStart(8, '0')}-${text}`;
}

/** Keeps pan number `pan` with `rounds` finished rounds of all notes of a lead, three strikes a note. */
export async function fillPan(store: PanStore, pan: number, rounds: number): Promise<void> {
  const random = seededRandom(pan);
  const id = rackPan(pan);
  await keep(store, [samples.sampleEdit(nameOf('edit', pan), `Lead ${pan}`, id)]);
  for (let from = 0; from < rounds; from += roundsAtOnce) {
    const records: RackRecord[] = [];
    for (let round = from; round < Math.min(rounds, from + roundsAtOnce); round += 1) {
      const start = roundStart(pan, round);
      const end = samples.sampleEnd(nameOf('end', pan, round), start);
      records.push(start, { ...end, at: instant(start.at + 600_000) });
      for (const note of notes) records.push(readingOf(start, pan, round, note, random));
    }
    await keep(store, records);
  }
  const read = await store.pan(id);
  if (read.kind === 'trouble') throw new Error(`The store says ${read.trouble}.`);
  await store.keepCard({ ...samples.sampleCard(id), name: `Lead ${pan}` }, read.value);
}

const roundStart = (pan: number, round: number): RoundStart => ({
  ...samples.sampleRound(rackRound(pan, round), rackPan(pan)),
  at: instant(samples.at(0) + round * week),
  order: notes,
});

function readingOf(
  start: RoundStart,
  pan: number,
  round: number,
  note: MidiNote,
  random: () => number,
): ReadingRecord {
  const reading = samples.sampleReading(nameOf('reading', pan, round, note), start, note);
  return {
    ...reading,
    id: recordId(reading.id),
    at: instant(start.at + 1000 * note),
    round: roundOf(start),
    strikes: Array.from({ length: strikesOfReading }, () => strikeOf(note, random)),
  };
}

/** Numbers with as many digits as measured ones have: a rack of round numbers would be smaller than a real one. */
function strikeOf(note: MidiNote, random: () => number): StrikeRecord {
  const normal = gaussianFrom(random);
  const line = (times: number) => ({
    hz: shiftedBy(times * frequencyOf(note, hertz(440)), 5 * normal()),
    sigmaCents: cents(between(random, 0.1, 1)),
    decaySeconds: seconds(between(random, 0.2, 0.8)),
    levelDb: decibels(between(random, -40, -10)),
  });
  return {
    fundamental: line(1),
    isInferred: false,
    octave: line(2),
    octaveRival: null,
    third: { ...line(4), kind: 'double-octave' },
    glideCents: cents(normal()),
    peakDb: decibels(between(random, -20, -5)),
    loudness: 'good',
    alsoRinging: [2, 3].map((partial) => ({
      hz: shiftedBy(frequencyOf(note, hertz(440)) * 1.5 * partial, normal()),
      levelDb: decibels(between(random, -60, -40)),
      note,
      partial: partial as 2 | 3,
    })),
  };
}

async function keep(store: PanStore, records: readonly RackRecord[]): Promise<void> {
  const kept = await store.keep(records);
  if (kept.kind === 'trouble') throw new Error(`The store says ${kept.trouble}.`);
}
