import { describe, expect, it } from 'vitest';
import type { PanCard } from '../../../src/domain/rack/pan-card';
import { inRackOrder, searchRack } from '../../../src/domain/rack/rack-order';
import { panId } from '../../../src/domain/records/rack-records';
import { hertz, instant } from '../../../src/domain/tuning/units';
import { day } from '../rounds/round-sample';

const now = instant(1000 * day);
const card = (name: string, more: Partial<PanCard> = {}): PanCard => ({
  version: 3,
  judgedBy: 'usual',
  pan: panId(name),
  name,
  family: 'lead',
  layoutName: 'Lead, low C',
  owner: '',
  maker: '',
  serial: '',
  isRemoved: false,
  hasConflict: false,
  noteCount: 29,
  lastRoundAt: instant(now - 10 * day),
  isProvisional: false,
  openRound: null,
  standings: { good: 29, playable: 0, out: 0, avoid: 0, unread: 0 },
  worst: [],
  worked: [],
  a4: hertz(440),
  panPitch: null,
  stopgaps: [],
  need: 0,
  reasons: [],
  ...more,
});
const names = (cards: readonly PanCard[]) => cards.map(({ name }) => name);

describe('the order of the rack', () => {
  const cards = [
    card('Lead 10', { need: 3 }),
    card('lead 2', { need: 9, lastRoundAt: instant(now - 50 * day) }),
    card('Écho', { lastRoundAt: null }),
    card('Bass', { need: 3, lastRoundAt: instant(now - 300 * day) }),
  ];

  it('by need puts the pan that needs the tuner most first, an old round counted in', () => {
    // Bass: 3 + 4 for 120 days over half a year; Écho: 6 for never having been read.
    expect(names(inRackOrder(cards, 'need', now))).toEqual(['lead 2', 'Bass', 'Écho', 'Lead 10']);
  });

  it('by name counts numbers as numbers, whatever the accents and capitals', () => {
    expect(names(inRackOrder(cards, 'name', now))).toEqual(['Bass', 'Écho', 'lead 2', 'Lead 10']);
  });

  it('by last round puts the one that was never read first, then the longest ago', () => {
    const order = names(inRackOrder(cards, 'last-round', now));
    expect(order).toEqual(['Écho', 'Bass', 'lead 2', 'Lead 10']);
  });

  it('does not depend on the order the cards come in', () => {
    const same = [card('a', { pan: panId('2') }), card('a', { pan: panId('1') }), ...cards];
    for (const order of ['need', 'name', 'last-round'] as const) {
      const sorted = inRackOrder(same, order, now);
      expect(inRackOrder([...same].reverse(), order, now)).toEqual(sorted);
    }
  });
});

describe('the search of the rack', () => {
  const cards = [
    card('Lead 1', { owner: 'José', maker: 'Ångström' }),
    card('Six bass', { layoutName: 'Six bass', serial: 'SB-0042' }),
  ];

  it('finds a pan by every word, in any of its texts, whatever the accents and capitals', () => {
    expect(names(searchRack(cards, 'jose'))).toEqual(['Lead 1']);
    expect(names(searchRack(cards, 'LOW angstrom'))).toEqual(['Lead 1']);
    expect(names(searchRack(cards, 'sb-0042 six'))).toEqual(['Six bass']);
    expect(names(searchRack(cards, 'six jose'))).toEqual([]);
  });

  it('finds an accent typed either way', () => {
    expect(names(searchRack(cards, 'josé'))).toEqual(['Lead 1']);
    expect(names(searchRack(cards, 'jose\u0301'))).toEqual(['Lead 1']);
  });

  it('finds everything for nothing', () => {
    expect(searchRack(cards, '  ')).toHaveLength(2);
  });
});
