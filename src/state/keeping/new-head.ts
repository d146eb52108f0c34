// What every new record begins with.
import type { Clock, Identities } from '../../domain/ports/phone-ports';
import { type PanId, type RecordId, recordId } from '../../domain/records/rack-records';
import type { Instant } from '../../domain/tuning/units';

export interface HeadPorts {
  readonly clock: Clock;
  readonly identities: Identities;
}

export interface NewHead {
  readonly shape: 1;
  readonly id: RecordId;
  readonly pan: PanId;
  readonly at: Instant;
}

/** The head of a record of `pan` that is made now, with an id of its own. */
export const newHead = (pan: PanId, { clock, identities }: HeadPorts): NewHead => ({
  shape: 1,
  id: recordId(identities.next()),
  pan,
  at: clock.now(),
});
