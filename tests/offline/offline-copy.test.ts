import { describe, expect, it } from 'vitest';
import { isCompleteCopy, restoreFileList } from '../../src/offline/offline-copy';

const at = (path: string): string => `https://host.example/folder/${path}`;
const inUse = [at('assets/main-1a2b.js'), at('assets/main-3c4d.css')];
const listed = [...inUse, at('index.html'), at('assets/worker-5e6f.js')];

describe('the offline copy', () => {
  it('is complete when it holds the start page, all that was built and all that the page is made of', () => {
    const kept = [
      at('index.html?__WB_REVISION__=77'),
      ...inUse,
      at('assets/worker-5e6f.js'),
      at('icon.svg'),
    ];
    expect(isCompleteCopy(kept, listed, inUse)).toBe(true);
  });

  it.each(listed)('is not complete without %s', (missing) => {
    const kept = listed.filter((address) => address !== missing);
    expect(isCompleteCopy(kept, listed, inUse)).toBe(false);
  });

  it('is not complete without the start page, even if the list forgets it', () => {
    expect(isCompleteCopy(inUse, inUse, inUse)).toBe(false);
  });

  it('is not complete when it belongs to another version', () => {
    const others = [at('index.html'), at('assets/main-0000.js'), at('assets/main-3c4d.css')];
    expect(isCompleteCopy(others, others, inUse)).toBe(false);
  });

  it('is not complete when storage was cleared', () => {
    expect(isCompleteCopy([], listed, inUse)).toBe(false);
  });

  it('promises nothing without a list, or for a page that is made of no files', () => {
    expect(isCompleteCopy(listed, [], inUse)).toBe(false);
    expect(isCompleteCopy(listed, listed, [])).toBe(false);
  });
});

describe('the list of built files', () => {
  it('is taken as it is when it is a list of names', () => {
    expect(restoreFileList(['index.html', 'assets/a.js'])).toEqual(['index.html', 'assets/a.js']);
  });

  it.each([undefined, null, 7, 'index.html', { 0: 'index.html' }, ['index.html', 7]])(
    '%j is no list',
    (list) => {
      expect(restoreFileList(list)).toEqual([]);
    },
  );
});
