// What an invented pan is called and how it is laid out, for tests that need all of its fields.
import { lowCLead } from '../../../src/domain/pans/layouts/low-c-lead';
import type { PanFields } from '../../../src/domain/records/rack-records';

/** A lead about which nothing is known, but for `known`. */
export const panFieldsSample = (known: Partial<PanFields> = {}): PanFields => ({
  name: 'Heron',
  family: 'lead',
  layout: lowCLead,
  owner: '',
  maker: '',
  serial: '',
  finish: '',
  remarks: '',
  a4: null,
  photo: null,
  wanted: '',
  wantedBy: '',
  isRemoved: false,
  ...known,
});
