import { describe, expect, it } from 'vitest';
import { browserIdentities } from '../../../src/storage/browser/browser-identities';

const version4 = /^[0-9a-f]{8}-[0-9a-f]{4}-4[0-9a-f]{3}-[89ab][0-9a-f]{3}-[0-9a-f]{12}$/;

describe('the name of a new record', () => {
  it('is a random UUID', () => {
    expect(browserIdentities().next()).toMatch(version4);
  });

  it('is one also where the browser makes none itself, and never the same twice', () => {
    const getRandomValues = crypto.getRandomValues.bind(crypto);
    const identities = browserIdentities({ getRandomValues });
    const names = Array.from({ length: 2000 }, () => identities.next());
    for (const name of names) expect(name).toMatch(version4);
    expect(new Set(names).size).toBe(names.length);
  });
});
