import { describe, expect, it } from 'vitest';
import type { PanCard } from '../../../src/domain/rack/pan-card';
import { restorePanCard } from '../../../src/domain/rack/restore-pan-card';
import { panId, roundId } from '../../../src/domain/records/rack-records';
import { cents, hertz, instant, midiNote } from '../../../src/domain/tuning/units';
import * as fc from '../../properties';
import { damaged } from '../records/record-arbitraries';

const notes = [midiNote(60), midiNote(72)];
const card: PanCard = {
  version: 3,
  judgedBy: 'usual',
  pan: panId('pan-1'),
  name: 'Loft lead',
  family: 'lead',
  layoutName: 'Low-C lead',
  owner: '',
  maker: '',
  serial: '',
  isRemoved: false,
  hasConflict: true,
  noteCount: 29,
  lastRoundAt: instant(1),
  isProvisional: false,
  openRound: roundId('round-1'),
  standings: { good: 20, playable: 5, out: 2, avoid: 1, unread: 1 },
  worst: notes,
  worked: [],
  a4: hertz(440),
  panPitch: cents(-3.5),
  stopgaps: notes,
  need: 12.5,
  reasons: [
    { kind: 'cracked', notes },
    { kind: 'dead', notes },
    { kind: 'avoid', notes },
    { kind: 'out', notes },
    { kind: 'buzzing', notes },
    { kind: 'pan-pitch', cents: cents(9), from: 29 },
    { kind: 'drift', cents: cents(2), from: 20 },
    { kind: 'old-round', lastRoundAt: instant(1) },
    { kind: 'never-read' },
  ],
};

describe('a card restored', () => {
  it('is unchanged if it was valid, with every reason there is', () => {
    expect(restorePanCard(card)).toEqual(card);
    expect(restorePanCard({ ...card, lastRoundAt: null, panPitch: null, openRound: null })).toEqual(
      { ...card, lastRoundAt: null, panPitch: null, openRound: null },
    );
  });

  it('never throws, and is null or valid', () => {
    let thrownAway = 0;
    fc.assert(
      fc.property(fc.oneof(fc.anything(), damaged(fc.constant(card))), (stored) => {
        const result = restorePanCard(stored);
        if (result === null) thrownAway++;
        else expect(restorePanCard(result)).toEqual(result);
      }),
      { numRuns: 1_000 },
    );
    expect(thrownAway).toBeGreaterThan(500);
  });

  it.each(Object.keys(card))('is thrown away without its field %s', (name) => {
    expect(restorePanCard({ ...card, [name]: undefined })).toBeNull();
  });

  it.each([
    ['an earlier version', { version: 1 }],
    ['one bad note among the worst', { worst: [60, 'x'] }],
    ['a reason of another version', { reasons: [{ kind: 'rust' }] }],
    ['a need that is no number', { need: Number.NaN }],
    ['a name too long', { name: 'x'.repeat(81) }],
  ])('is thrown away with %s', (_what, part) => {
    expect(restorePanCard({ ...card, ...part })).toBeNull();
  });
});
