import { expect, test } from 'vitest';
import { filePart, receiveAddress, sharePath } from '../../src/offline/waiting-place';
import { builtFiles, readBuilt } from './built-files';

interface Icon {
  readonly src: string;
  readonly sizes: string;
  readonly purpose: string;
}

const manifest = () => JSON.parse(readBuilt('manifest.webmanifest').toString());

test('the app has its fixed identity and works in any folder', () => {
  const { id, name, start_url, scope, display } = manifest();
  // The id never changes: another one would be another app to every phone that has this one.
  expect(id).toBe('/ringwright');
  expect({ name, start_url, scope, display }).toEqual({
    name: 'Ringwright',
    start_url: './',
    scope: './',
    display: 'standalone',
  });
});

test('every icon is there in the size it claims, plain and maskable apart', () => {
  const icons: readonly Icon[] = manifest().icons;
  for (const { src, sizes } of icons) {
    expect(builtFiles()).toContain(src);
    // Width and height in the IHDR chunk (PNG specification, 11.2.1).
    const png = readBuilt(src);
    expect(`${png.readUInt32BE(16)}x${png.readUInt32BE(20)}`).toBe(sizes);
  }
  expect(icons.map(({ sizes, purpose }) => `${sizes} ${purpose}`)).toEqual([
    '192x192 any',
    '512x512 any',
    '512x512 maskable',
  ]);
});

test('shared and opened files are sent where the service worker and the page expect them', () => {
  const { share_target, file_handlers, launch_handler } = manifest();
  expect(share_target).toMatchObject({
    action: `./${sharePath}`,
    method: 'POST',
    enctype: 'multipart/form-data',
    params: { files: [{ name: filePart }] },
  });
  // What this app hands out: packed, as JSON where it cannot pack, and as text for share sheets.
  expect(share_target.params.files[0].accept).toEqual(
    expect.arrayContaining(['application/gzip', 'application/json', 'text/plain']),
  );
  expect(file_handlers).toMatchObject([{ action: receiveAddress }]);
  // With one, Chromium throws away what is shared.
  expect(launch_handler).toBeUndefined();
});

test('the service worker takes in what is shared', () => {
  expect(readBuilt('sw.js').toString()).toContain(sharePath);
});
