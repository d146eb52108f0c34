// fast-check: any valid record, any valid attachment, and any plain data.

import type { PanLayout } from '../../../src/domain/pans/layout';
import { blowFirmnesses, blowPlaces, blowSides } from '../../../src/domain/records/blow-places';
import type { ImpactPlace } from '../../../src/domain/records/impact-place';
import { lookAnswers, lookKinds } from '../../../src/domain/records/look-kinds';
import type {
  Attachment,
  Blows,
  Erasure,
  KnockCheck,
  Mark,
  PanEdit,
  PanFields,
  RackRecord,
  ReadingRecord,
  RecordId,
  RoundEnd,
  RoundStart,
  Stopgap,
  TunerVisit,
} from '../../../src/domain/records/rack-records';
import { attachmentId, panId, recordId, roundId } from '../../../src/domain/records/rack-records';
import type { LineRecord, StrikeRecord } from '../../../src/domain/records/strike-record';
import {
  cents,
  decibels,
  hertz,
  instant,
  midiNote,
  seconds,
} from '../../../src/domain/tuning/units';
import * as fc from '../../properties';

/** Without −0, which JSON does not hold. */
const number = (min: number, max: number) =>
  fc.double({ min, max, noNaN: true }).map((value) => value + 0);

const text = (maxLength: number) => fc.string({ unit: 'binary', maxLength });
const visible = text(40).map((value) => `x${value}`);
const uuid = fc.uuid();

/** A small set of ids: so that records meet, replace and erase each other. */
export const anyRecordId: fc.Arbitrary<RecordId> = fc
  .integer({ min: 0, max: 30 })
  .map((n) => recordId(`record-${n}`));
const aPan = fc.constantFrom('pan-a', 'pan-b').map(panId);
const note = fc.integer({ min: 0, max: 127 }).map(midiNote);
const noteOrNull = fc.option(note);
const anInstant = fc.integer({ min: 1.7e12, max: 1.9e12 }).map(instant);
const attachment = uuid.map(attachmentId);
const a4 = number(400, 480).map(hertz);

const head = { shape: fc.constant(1 as const), id: anyRecordId, pan: aPan, at: anInstant };

const place = fc.record(
  {
    note,
    ring: fc.constantFrom('outer' as const, 'middle' as const, 'centre' as const),
    clock: number(0, 12),
    radius: number(0, 1),
    along: number(0.01, 0.5),
    across: number(0.01, 0.5),
    third: fc.constantFrom('twelfth' as const, 'double-octave' as const, 'none' as const),
    offset: number(-50, 50).map(cents),
  },
  { requiredKeys: ['note', 'ring', 'clock', 'radius', 'along', 'across'] },
);

export const anyLayout: fc.Arbitrary<PanLayout> = fc.record(
  {
    id: text(20),
    name: text(40),
    drums: fc.array(fc.record({ name: text(20), notes: fc.array(place, { maxLength: 5 }) }), {
      maxLength: 3,
    }),
    source: text(60),
    doubts: fc.array(text(60), { maxLength: 2 }),
  },
  { requiredKeys: ['id', 'name', 'drums', 'source'] },
);

export const anyPanFields: fc.Arbitrary<PanFields> = fc.record({
  name: visible,
  family: fc.constantFrom('lead' as const, 'double-second' as const, 'bass' as const),
  layout: anyLayout,
  owner: text(30),
  maker: text(30),
  serial: text(30),
  finish: text(30),
  remarks: text(60),
  a4: fc.option(a4),
  photo: fc.option(attachment),
  wanted: text(60),
  wantedBy: text(20),
  isRemoved: fc.boolean(),
});

/** All fields, or some of them. */
const someFields: fc.Arbitrary<Partial<PanFields>> = anyPanFields.chain((fields) =>
  fc.oneof(
    fc.constant(fields),
    fc
      .subarray(Object.keys(fields) as (keyof PanFields)[])
      .map((names) => Object.fromEntries(names.map((name) => [name, fields[name]]))),
  ),
);

export const anyPanEdit: fc.Arbitrary<PanEdit> = fc.record({
  ...head,
  kind: fc.constant('pan-edit' as const),
  fields: someFields,
  replaces: fc.array(anyRecordId, { maxLength: 4 }),
});

export const anyRoundStart: fc.Arbitrary<RoundStart> = fc.record({
  ...head,
  kind: fc.constant('round' as const),
  way: fc.constantFrom('guided' as const, 'free' as const, 'quick' as const),
  order: fc.array(note, { maxLength: 30 }),
  conditions: fc.record({
    temperature: fc.option(number(-10, 45)),
    standing: fc.option(fc.constantFrom('settled' as const, 'unloaded' as const, 'sun' as const)),
  }),
  a4,
});

const aRound = anyRecordId.map(roundId);

export const anyRoundEnd: fc.Arbitrary<RoundEnd> = fc.record({
  ...head,
  kind: fc.constant('round-end' as const),
  round: aRound,
  ending: fc.constantFrom('finished' as const, 'left' as const),
});

const lineParts = {
  hz: number(30, 8_000).map(hertz),
  sigmaCents: number(0.01, 5).map(cents),
  decaySeconds: number(0.01, 20).map(seconds),
  levelDb: number(-120, 0).map(decibels),
};
const line: fc.Arbitrary<LineRecord> = fc.record(
  { ...lineParts, window: fc.constant({ from: seconds(0.1), to: seconds(0.588) }) },
  { requiredKeys: ['hz', 'sigmaCents', 'decaySeconds', 'levelDb'] },
);

const strikeWithoutBuzz: fc.Arbitrary<StrikeRecord> = fc.record({
  fundamental: line,
  isInferred: fc.boolean(),
  octave: fc.option(line),
  octaveRival: fc.option(fc.record({ ...lineParts, note: noteOrNull })),
  third: fc.option(
    fc.record({
      ...lineParts,
      kind: fc.constantFrom('twelfth' as const, 'double-octave' as const),
    }),
  ),
  glideCents: number(-100, 100).map(cents),
  peakDb: number(-90, 0).map(decibels),
  loudness: fc.constantFrom('soft' as const, 'good' as const, 'loud' as const),
  alsoRinging: fc.array(
    fc.record({
      hz: lineParts.hz,
      levelDb: lineParts.levelDb,
      note: noteOrNull,
      partial: fc.option(fc.constantFrom(1 as const, 2 as const, 3 as const, 4 as const)),
    }),
    { maxLength: 3 },
  ),
});

/** Strikes of older apps hold no buzz. */
export const anyStrikeRecord: fc.Arbitrary<StrikeRecord> = fc
  .tuple(strikeWithoutBuzz, fc.option(number(-60, 0).map(decibels)))
  .map(([strike, buzzDb]) => (buzzDb === null ? strike : { ...strike, buzzDb }));

const refused = fc.record({ knocks: fc.nat(9), heardAsSeveral: fc.nat(9) });

/** Records of older apps hold no refused blows. */
const orWithRefused = <T extends ReadingRecord | Mark>(records: fc.Arbitrary<T>) =>
  fc
    .tuple(records, fc.option(refused))
    .map(([record, counts]) => (counts === null ? record : { ...record, refused: counts }));

const readingWithoutRefused: fc.Arbitrary<ReadingRecord> = fc.record({
  ...head,
  kind: fc.constant('reading' as const),
  round: fc.option(aRound),
  note,
  strikes: fc.array(anyStrikeRecord, { minLength: 1, maxLength: 4 }),
  taking: fc.record({
    source: fc.constantFrom('microphone' as const, 'file' as const, 'practice' as const),
    sampleRate: fc.constantFrom(44_100, 48_000, 96_000),
    processing: fc.array(text(30), { maxLength: 2 }),
    gaps: fc.nat(20),
    appVersion: text(12),
  }),
  sound: fc.option(attachment),
});

export const anyReading: fc.Arbitrary<ReadingRecord> = orWithRefused(readingWithoutRefused);

const markWithoutRefused: fc.Arbitrary<Mark> = fc.record({
  ...head,
  kind: fc.constant('mark' as const),
  round: fc.option(aRound),
  note: fc.integer({ min: 60, max: 63 }).map(midiNote),
  mark: fc.constantFrom(
    'dead' as const,
    'buzzing' as const,
    'cracked' as const,
    'skipped' as const,
    'none' as const,
  ),
});

export const anyMark: fc.Arbitrary<Mark> = orWithRefused(markWithoutRefused);

export const anyBlows: fc.Arbitrary<Blows> = fc.record({
  ...head,
  kind: fc.constant('blows' as const),
  round: fc.constant(null),
  note,
  logged: fc.option(
    fc.record({
      place: fc.constantFrom(...blowPlaces),
      side: fc.constantFrom(...blowSides),
      firmness: fc.constantFrom(...blowFirmnesses),
    }),
  ),
  count: fc.option(fc.integer({ min: 1, max: 200 })),
  before: fc.option(anyRecordId),
  after: fc.option(anyRecordId),
});

const impact: fc.Arbitrary<ImpactPlace> = fc.oneof(
  fc.record({ kind: fc.constant('note' as const), note }),
  fc.record({
    kind: fc.constant('point' as const),
    drum: fc.nat(5),
    clock: number(0, 12),
    radius: number(0, 1),
  }),
);

export const anyKnockCheck: fc.Arbitrary<KnockCheck> = fc.record({
  ...head,
  kind: fc.constant('knock-check' as const),
  round: fc.option(aRound),
  looks: fc.array(
    fc.record({
      look: fc.constantFrom(...lookKinds),
      answer: fc.constantFrom(...lookAnswers),
      photo: fc.option(attachment),
    }),
    { maxLength: 8 },
  ),
  impact: fc.option(impact),
  remarks: text(60),
});

export const anyStopgap: fc.Arbitrary<Stopgap> = fc.record({
  ...head,
  kind: fc.constant('stopgap' as const),
  note,
  stopgap: fc.constantFrom('magnet' as const, 'none' as const),
});

export const anyTunerVisit: fc.Arbitrary<TunerVisit> = fc.record({
  ...head,
  kind: fc.constant('tuner-visit' as const),
  visitedAt: anInstant,
  who: text(30),
  done: text(60),
  remarks: text(60),
  nextVisit: fc.option(anInstant),
  startsBaseline: fc.boolean(),
});

export const anyErasure: fc.Arbitrary<Erasure> = fc.record({
  ...head,
  kind: fc.constant('erasure' as const),
  target: anyRecordId,
});

export const anyRecord: fc.Arbitrary<RackRecord> = fc.oneof(
  anyPanEdit,
  anyRoundStart,
  anyRoundEnd,
  anyReading,
  anyMark,
  anyBlows,
  anyKnockCheck,
  anyStopgap,
  anyTunerVisit,
  anyErasure,
);

export const anyAttachment: fc.Arbitrary<Attachment> = fc
  .record({
    shape: fc.constant(1 as const),
    id: anyRecordId.map((id) => attachmentId(id)),
    pan: aPan,
    at: anInstant,
    what: fc.constantFrom(
      { kind: 'photo' as const, type: 'image/jpeg' },
      { kind: 'sound' as const, type: 'audio/wav' },
    ),
    bytes: fc.uint8Array({ minLength: 1, maxLength: 200 }),
  })
  .map(({ what, bytes, ...rest }) => ({ ...rest, ...what, bytes: new Uint8Array(bytes) }));

/** Plain data with one part of it, mostly a deep one, exchanged for anything. */
export const damaged = (whole: fc.Arbitrary<unknown>): fc.Arbitrary<unknown> =>
  fc.tuple(whole, fc.anything(), fc.infiniteStream(fc.nat())).map(([value, other, choices]) => {
    const choose = <T>(list: readonly T[]): T | undefined =>
      list[choices.next().value % list.length];
    const exchanged = (part: unknown): unknown => {
      if (typeof part !== 'object' || part === null) return other;
      const entries = Object.entries(part);
      const inner = entries.filter(([, each]) => typeof each === 'object' && each !== null);
      const isDeep = inner.length > 0 && choose([true, true, true, false]);
      const [name, each] = choose(isDeep ? inner : entries) ?? [];
      if (name === undefined) return other;
      return Array.isArray(part)
        ? part.with(Number(name), exchanged(each))
        : { ...part, [name]: isDeep ? exchanged(each) : other };
    };
    return exchanged(value);
  });
