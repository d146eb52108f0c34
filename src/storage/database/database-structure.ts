// The stores of the database and how each version's structure grows out of the one before. Never their content.
import type { DBSchema, IDBPDatabase } from 'idb';
import type { RackRecord } from '../../domain/records/rack-records';

export const databaseName = 'ringwright';
export const databaseVersion = 4;

interface KeptByPan {
  key: string;
  /** Whatever is read is restored before it is believed. */
  value: unknown;
  indexes: { pan: string };
}

export interface RingwrightSchema extends DBSchema {
  settings: { key: string; value: unknown };
  'pan-edits': KeptByPan;
  rounds: KeptByPan;
  'round-ends': KeptByPan;
  /** `place` is [pan, note]: a range over it gives all readings of a pan, too. */
  readings: {
    key: string;
    value: unknown;
    indexes: { round: string; place: [string, number] };
  };
  marks: KeptByPan;
  blows: KeptByPan;
  'knock-checks': KeptByPan;
  stopgaps: KeptByPan;
  'tuner-visits': KeptByPan;
  erasures: KeptByPan;
  /** `soundBytes` is written beside the bytes of sounds only, so that they are summed without reading them. */
  attachments: { key: string; value: unknown; indexes: { pan: string; soundBytes: number } };
  /** Entries of files that say something else than the one of their name that is kept: a `BesideRow` each. */
  beside: KeptByPan;
  /** Per pan a `CardRow`; a pan that has records has a row. */
  cards: { key: string; value: unknown };
  /** Empty but for moments: see `renewLog`. */
  scratch: { key: number; value: Uint8Array };
}

export type Connection = IDBPDatabase<RingwrightSchema>;

export type RecordStore =
  | 'pan-edits'
  | 'rounds'
  | 'round-ends'
  | 'readings'
  | 'marks'
  | 'blows'
  | 'knock-checks'
  | 'stopgaps'
  | 'tuner-visits'
  | 'erasures';

export const storeOf: Readonly<Record<RackRecord['kind'], RecordStore>> = {
  'pan-edit': 'pan-edits',
  round: 'rounds',
  'round-end': 'round-ends',
  reading: 'readings',
  mark: 'marks',
  blows: 'blows',
  'knock-check': 'knock-checks',
  stopgap: 'stopgaps',
  'tuner-visit': 'tuner-visits',
  erasure: 'erasures',
};

/** The range of `place` with all readings of a pan. */
export const placesOfPan = (pan: string): IDBKeyRange =>
  // An empty list is larger than every number.
  IDBKeyRange.bound([pan], [pan, []]);

/** Raises an empty database or one of an earlier version. Synchronous: a migration that waits could be left half done. */
export function raiseStructure(database: Connection, oldVersion: number): void {
  if (oldVersion < 1) database.createObjectStore('settings');
  if (oldVersion < 2) {
    for (const name of [
      'pan-edits',
      'rounds',
      'round-ends',
      'marks',
      'blows',
      'erasures',
    ] as const) {
      database.createObjectStore(name, { keyPath: 'id' }).createIndex('pan', 'pan');
    }
    const readings = database.createObjectStore('readings', { keyPath: 'id' });
    readings.createIndex('round', 'round');
    readings.createIndex('place', ['pan', 'note']);
    const attachments = database.createObjectStore('attachments', { keyPath: 'id' });
    attachments.createIndex('pan', 'pan');
    attachments.createIndex('soundBytes', 'soundBytes');
    database.createObjectStore('cards', { keyPath: 'pan' });
    database.createObjectStore('scratch');
  }
  if (oldVersion < 3) {
    for (const name of ['knock-checks', 'stopgaps', 'tuner-visits'] as const) {
      database.createObjectStore(name, { keyPath: 'id' }).createIndex('pan', 'pan');
    }
  }
  if (oldVersion < 4) {
    database.createObjectStore('beside', { keyPath: 'key' }).createIndex('pan', 'pan');
  }
}
