import { describe, expect, it } from 'vitest';
import { panId, roundId } from '../../../src/domain/records/rack-records';
import { midiNote } from '../../../src/domain/tuning/units';
import { addressOf, type Route, routeOf } from '../../../src/ui/frame/route';

const routes: readonly Route[] = [
  { screen: 'rack' },
  { screen: 'backup' },
  { screen: 'cautions' },
  { screen: 'dropped' },
  { screen: 'knock', pan: panId('p') },
  { screen: 'tonight', pan: panId('p') },
  { screen: 'pan', pan: panId('a/b %') },
  { screen: 'layout', pan: panId('p') },
  { screen: 'round', pan: panId('p'), round: roundId('r') },
  { screen: 'note', pan: panId('p'), note: midiNote(74) },
  { screen: 'note', pan: panId('p'), note: midiNote(74), from: roundId('a/b') },
  { screen: 'bench', pan: panId('p'), note: midiNote(74) },
  { screen: 'bare-bench', note: midiNote(74) },
];

describe('an address', () => {
  it('leads back to the route it was made of', () => {
    for (const route of routes) expect(routeOf(addressOf(route))).toEqual(route);
  });

  it('that leads nowhere leads to the rack', () => {
    const wrong = [
      '#/nowhere',
      '#/pan',
      '#/pan//layout',
      '#/pan/p/note/500',
      '#/pan/p/bench/x',
      '#/bench',
      '#/bench/500',
      '#/pan/p/round/',
      '#/%E0',
    ];
    for (const hash of wrong) expect(routeOf(hash)).toEqual({ screen: 'rack' });
  });
});
