// What every new record begins with.
import type { Clock, Identities } from '../../domain/ports/phone-ports';
import { type PanId, type RecordId, recordId } from '../../domain/records/rack-records';
import type { Instant } from '../../domain/tuning/units';
import type { RecordTurns } from './record-turns';

export interface HeadPorts {
  readonly clock: Clock;
  readonly identities: Identities;
  readonly turns: RecordTurns;
}

export interface NewHead {
  readonly shape: 1;
  readonly id: RecordId;
  readonly pan: PanId;
  readonly at: Instant;
  readonly turn: Instant;
}

/** The head of a record of `pan` that is made now, with an id of its own. */
export function newHead(pan: PanId, { clock, identities, turns }: HeadPorts): NewHead {
  const at = clock.now();
  return { shape: 1, id: recordId(identities.next()), pan, at, turn: turns.next(pan, at) };
}
