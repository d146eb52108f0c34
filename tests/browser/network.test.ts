// A network that gives wrong answers can neither take the app away nor make it promise what is not there.
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { precachedIn } from '../build/built-files';
import type { Fault } from './bad-network';
import { type NetworkBench, openNetworkBench } from './network-bench';
import type { Trial } from './network-trial';

/** Some files of each kind, by the beginning of their names; all of them in all ways: `npm run bench:network`. */
const some: readonly (readonly [Trial['when'], string, Fault])[] = [
  ['first visit', 'assets/index-', 'silent cut'],
  ['first visit', 'assets/watch-start-', 'portal'],
  ['first visit', 'assets/rack-store-', 'silent cut'],
  ['first visit', 'assets/restore-settings-', 'other version'],
  ['first visit', 'assets/browser-arrivals-', 'other version'],
  ['first visit', 'assets/service-worker-updates-', 'silent cut'],
  ['first visit', 'assets/analysis.worker-', 'other version'],
  ['first visit', 'assets/capture.worklet-', 'portal'],
  ['first visit', 'assets/settings-screen-', 'honest cut'],
  ['first visit', 'sw.js', 'status 500'],
  ['update', 'index.html', 'portal'],
  ['update', 'assets/index-', 'silent cut'],
  ['update', 'assets/analysis.worker-', 'other version'],
  ['update', 'assets/settings-screen-', 'honest cut'],
  ['update', 'assets/service-worker-updates-', 'status 500'],
  ['update', 'sw.js', 'silent cut'],
];

describe('a wrong answer of the network', () => {
  let bench: NetworkBench;
  beforeAll(async () => {
    bench = await openNetworkBench();
  });
  afterAll(() => bench.close());

  it.each(some)('at the %s, for %s, %s: takes nothing away', async (when, name, fault) => {
    const { first, next } = bench.versions;
    // What both versions have is not fetched again.
    const path = [...precachedIn(when === 'update' ? next : first), 'sw.js'].find(
      (each) =>
        each.startsWith(name) &&
        each.endsWith(/\.\w+$/.exec(name)?.[0] ?? '.js') &&
        (when === 'first visit' || each === name || !precachedIn(first).includes(each)),
    );
    if (path === undefined) throw new Error(`The build has no ${name}`);
    expect(await bench.run({ path, fault, when })).toEqual([]);
  });
});
