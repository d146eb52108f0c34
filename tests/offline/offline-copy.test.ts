import { describe, expect, it } from 'vitest';
import { isCompleteCopy } from '../../src/offline/offline-copy';

const at = (path: string): string => `https://host.example/folder/${path}`;
const inUse = [at('assets/main-1a2b.js'), at('assets/main-3c4d.css')];

describe('the offline copy', () => {
  it('is complete when it holds the start page and all that the page is made of', () => {
    const kept = [at('index.html?__WB_REVISION__=77'), ...inUse, at('assets/worker-5e6f.js')];
    expect(isCompleteCopy(kept, inUse)).toBe(true);
  });

  it('is not complete without the start page', () => {
    expect(isCompleteCopy(inUse, inUse)).toBe(false);
  });

  it('is not complete when it belongs to another version', () => {
    const kept = [at('index.html'), at('assets/main-0000.js'), at('assets/main-3c4d.css')];
    expect(isCompleteCopy(kept, inUse)).toBe(false);
  });

  it('is not complete when storage was cleared', () => {
    expect(isCompleteCopy([], inUse)).toBe(false);
  });

  it('promises nothing for a page that is made of no files', () => {
    expect(isCompleteCopy([at('index.html')], [])).toBe(false);
  });
});
