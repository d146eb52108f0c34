import { afterEach, beforeEach, describe, expect, it, vi } from 'vitest';
import { BrowserFileHandout } from '../../../src/storage/browser/browser-file-handout';

let handout = new BrowserFileHandout();
const file = handout.textFile('readings.csv', 'text/csv', 'pan,note');
const click = vi.fn();
const share = vi.fn();

function phone(options: { standalone?: boolean; coarse?: boolean; canShare?: boolean | null }) {
  const { canShare } = options;
  vi.stubGlobal('navigator', {
    share,
    ...(canShare === null ? {} : { canShare: () => canShare ?? true }),
    ...(options.standalone === undefined ? {} : { standalone: options.standalone }),
  });
  vi.stubGlobal('matchMedia', () => ({ matches: options.coarse ?? false }));
}

beforeEach(() => {
  handout = new BrowserFileHandout();
  share.mockReset().mockResolvedValue(undefined);
  click.mockReset();
  vi.stubGlobal('document', { createElement: () => ({ click }) });
});
afterEach(() => {
  vi.unstubAllGlobals();
});

describe('a file on its way out', () => {
  it('goes to the share sheet on the home screen of an iPhone', async () => {
    phone({ standalone: true });
    expect(await handout.handOut(file)).toBe('shared');
    expect(share).toHaveBeenCalledWith({ files: [file] });
    expect(click).not.toHaveBeenCalled();
  });

  it('takes its text along to the share sheet, and only there', async () => {
    phone({ coarse: true });
    const picture = handout.dataFile('tonight.png', 'image/png', Uint8Array.from([1, 2, 3]));
    expect(picture.size).toBe(3);
    expect(await handout.handOut(picture, 'Play it without D4.')).toBe('shared');
    expect(share).toHaveBeenCalledWith({ files: [picture], text: 'Play it without D4.' });
  });

  it('can be a text to paste, where the browser allows it', async () => {
    vi.stubGlobal('navigator', { clipboard: { writeText: () => Promise.resolve() } });
    expect(await handout.copy('Play it.')).toBe(true);
    vi.stubGlobal('navigator', {});
    expect(await handout.copy('Play it.')).toBe(false);
  });

  it('goes to the share sheet on a phone that shares such files', async () => {
    phone({ coarse: true });
    expect(await handout.handOut(file)).toBe('shared');
  });

  it.each([
    ['a phone that shares no such file', { coarse: true, canShare: false }],
    ['a phone that shares no files at all', { coarse: true, canShare: null }],
    ['a computer', { coarse: false }],
  ])('is downloaded on %s', async (_name, options) => {
    phone(options);
    expect(await handout.handOut(file)).toBe('downloaded');
    expect(click).toHaveBeenCalledTimes(1);
    expect(share).not.toHaveBeenCalled();
  });

  it.each([
    ['AbortError', 'dismissed'],
    ['NotAllowedError', 'again'],
    ['DataError', 'failed'],
  ])('that the share sheet answers with %s is %s', async (name, answer) => {
    phone({ coarse: true });
    share.mockRejectedValue(new DOMException('no', name));
    expect(await handout.handOut(file)).toBe(answer);
    expect(click).not.toHaveBeenCalled();
  });

  it('that the share sheet will not have is downloaded at the next tap, except on an iPhone', async () => {
    const refuse = () => share.mockRejectedValue(new DOMException('type', 'NotAllowedError'));
    phone({ coarse: true });
    refuse();
    expect(await handout.handOut(file)).toBe('again');
    expect(await handout.handOut(file)).toBe('downloaded');
    phone({ standalone: true });
    refuse();
    const other = handout.textFile('readings.csv', 'text/csv', 'pan,note');
    expect(await handout.handOut(other)).toBe('again');
    expect(await handout.handOut(other)).toBe('again');
  });

  it.each([
    ['text', 'Android, whose share sheet takes no other', { coarse: true }],
    ['packed', 'a phone without a share sheet for files', { coarse: true, canShare: null }],
    ['packed', 'an iPhone', { standalone: true, coarse: true }],
    ['packed', 'a computer', { coarse: false }],
  ] as const)('is best %s on %s', (form, _name, options) => {
    phone(options);
    expect(handout.bestForm()).toBe(form);
  });
});
