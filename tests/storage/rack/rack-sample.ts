// Small records of an invented pan, for tests of what keeps them.
import { lowCLead } from '../../../src/domain/pans/layouts/low-c-lead';
import type { PanCard } from '../../../src/domain/rack/pan-card';
import {
  type Attachment,
  attachmentId,
  type Blows,
  type Erasure,
  type KnockCheck,
  type Mark,
  type PanEdit,
  type PanId,
  type PanRecords,
  panId,
  type ReadingRecord,
  type RoundEnd,
  type RoundStart,
  recordId,
  roundOf,
  type Stopgap,
  type TunerVisit,
} from '../../../src/domain/records/rack-records';
import type { StrikeRecord } from '../../../src/domain/records/strike-record';
import {
  cents,
  decibels,
  hertz,
  instant,
  midiNote,
  seconds,
} from '../../../src/domain/tuning/units';
import { panFieldsSample } from '../../domain/records/pan-fields-sample';

export const samplePan = panId('pan-1');

/** The records of that pan: these, and none of any other kind. */
export const samplePanRecords = (parts: Partial<PanRecords> = {}): PanRecords => ({
  pan: samplePan,
  edits: [],
  rounds: [],
  ends: [],
  marks: [],
  blows: [],
  knockChecks: [],
  stopgaps: [],
  visits: [],
  erasures: [],
  ...parts,
});
const second = 1000;
/** 2026-01-05 18:00 UTC. */
const start = Date.UTC(2026, 0, 5, 18);
export const at = (secondsLater: number) => instant(start + secondsLater * second);

export const sampleEdit = (id: string, name: string, pan: PanId = samplePan): PanEdit => ({
  shape: 1,
  kind: 'pan-edit',
  id: recordId(id),
  pan,
  at: at(0),
  replaces: [],
  fields: panFieldsSample({ name }),
});

export const sampleRound = (id: string, pan: PanId = samplePan): RoundStart => ({
  shape: 1,
  kind: 'round',
  id: recordId(id),
  pan,
  at: at(60),
  way: 'guided',
  order: [midiNote(72), midiNote(60)],
  conditions: { temperature: 24, standing: 'settled' },
  a4: hertz(440),
});

export const sampleEnd = (id: string, round: RoundStart): RoundEnd => ({
  shape: 1,
  kind: 'round-end',
  id: recordId(id),
  pan: round.pan,
  at: at(600),
  round: roundOf(round),
  ending: 'finished',
});

const strike: StrikeRecord = {
  fundamental: line(523.9, 0.4),
  isInferred: false,
  octave: line(1047.1, 0.3),
  octaveRival: null,
  third: { ...line(2094, 0.5), kind: 'double-octave' },
  glideCents: cents(1.2),
  peakDb: decibels(-11),
  loudness: 'good',
  alsoRinging: [],
};

export const sampleReading = (
  id: string,
  round: RoundStart | null,
  note = 72,
  secondsLater = 90,
  pan: PanId = round?.pan ?? samplePan,
): ReadingRecord => ({
  shape: 1,
  kind: 'reading',
  id: recordId(id),
  pan,
  at: at(secondsLater),
  round: round && roundOf(round),
  note: midiNote(note),
  strikes: [strike, strike, strike],
  taking: {
    source: 'practice',
    sampleRate: 48_000,
    processing: [],
    gaps: 0,
    appVersion: '0.1.0',
  },
  sound: null,
});

export const sampleMark = (id: string, note = 72): Mark => ({
  shape: 1,
  kind: 'mark',
  id: recordId(id),
  pan: samplePan,
  at: at(120),
  round: null,
  note: midiNote(note),
  mark: 'buzzing',
});

export const sampleBlows = (id: string, note = 72): Blows => ({
  shape: 1,
  kind: 'blows',
  id: recordId(id),
  pan: samplePan,
  at: at(125),
  round: null,
  note: midiNote(note),
  logged: { place: 'border', side: 'above', firmness: 'light' },
  count: 3,
  before: recordId('reading-1'),
  after: null,
});

export const sampleKnockCheck = (id: string): KnockCheck => ({
  shape: 1,
  kind: 'knock-check',
  id: recordId(id),
  pan: samplePan,
  at: at(126),
  round: null,
  looks: [{ look: 'rim', answer: 'yes', photo: null }],
  impact: { kind: 'point', drum: 0, clock: 3, radius: 0.9 },
  remarks: '',
});

export const sampleStopgap = (id: string, note = 72): Stopgap => ({
  shape: 1,
  kind: 'stopgap',
  id: recordId(id),
  pan: samplePan,
  at: at(127),
  note: midiNote(note),
  stopgap: 'magnet',
});

export const sampleVisit = (id: string, more: Partial<TunerVisit> = {}): TunerVisit => ({
  shape: 1,
  kind: 'tuner-visit',
  id: recordId(id),
  pan: samplePan,
  at: at(128),
  visitedAt: at(120),
  who: 'The tuner',
  done: 'Fine tuning of all notes.',
  remarks: '',
  nextVisit: null,
  startsBaseline: true,
  ...more,
});

export const sampleErasure = (id: string, target: string): Erasure => ({
  shape: 1,
  kind: 'erasure',
  id: recordId(id),
  pan: samplePan,
  at: at(130),
  target: recordId(target),
});

export const sampleAttachment = (
  id: string,
  kind: Attachment['kind'],
  bytes: number,
  pan: PanId = samplePan,
): Attachment => ({
  shape: 1,
  id: attachmentId(id),
  pan,
  at: at(95),
  kind,
  type: kind === 'sound' ? 'audio/wav' : 'image/jpeg',
  bytes: new Uint8Array(bytes).map((_, n) => n % 251),
});

export const sampleCard = (pan: PanId = samplePan): PanCard => ({
  version: 3,
  judgedBy: 'usual',
  pan,
  name: 'Lead 1',
  family: 'lead',
  layoutName: lowCLead.name,
  owner: '',
  maker: '',
  serial: '',
  isRemoved: false,
  hasConflict: false,
  noteCount: 29,
  lastRoundAt: at(60),
  isProvisional: false,
  openRound: null,
  standings: { good: 20, playable: 5, out: 3, avoid: 1, unread: 0 },
  worst: [midiNote(72)],
  worked: [],
  a4: hertz(440),
  panPitch: cents(3),
  stopgaps: [],
  need: 4,
  reasons: [{ kind: 'avoid', notes: [midiNote(72)] }],
});

function line(hz: number, sigma: number) {
  return {
    hz: hertz(hz),
    sigmaCents: cents(sigma),
    decaySeconds: seconds(0.4),
    levelDb: decibels(-20),
  };
}
