// A compressed sound file is small and may be hours long: how long is asked before it is unpacked.
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { type OpenedApp, openApp } from './open-app';

declare global {
  interface Window {
    decoded?: number;
  }
}

/** Runs in the page before the app. */
function countDecoding(): void {
  window.decoded = 0;
  const { decodeAudioData } = BaseAudioContext.prototype;
  BaseAudioContext.prototype.decodeAudioData = function (...given) {
    window.decoded = (window.decoded ?? 0) + 1;
    return decodeAudioData.apply(this, given);
  };
}

/** Silence as MPEG-1 layer III at 32 kb/s and 44.1 kHz, one channel: every frame is alike (ISO 11172-3). */
function silentMp3(seconds: number): Buffer {
  const frame = Buffer.alloc(104);
  frame.set([0xff, 0xfb, 0x10, 0xc4]);
  const frames = Math.round((seconds * 44_100) / 1152);
  return Buffer.concat(Array.from({ length: frames }, () => frame));
}

describe('a compressed sound file', () => {
  let app: OpenedApp;
  beforeAll(async () => {
    app = await openApp('#/', { beforeApp: countDecoding });
  });
  afterAll(() => app.close());

  const open = async (name: string, mimeType: string, buffer: Buffer) => {
    await app.page.goto(app.address);
    await app.page
      .locator('main.rack input[type="file"]')
      .setInputFiles({ name, mimeType, buffer });
  };
  const decoded = () => app.page.evaluate(() => window.decoded);

  it('of half an hour is refused in words, and is not unpacked', async () => {
    await open('band.mp3', 'audio/mpeg', silentMp3(1800));
    await app.page.getByText('This file is longer than ten minutes.').waitFor();
    expect(await decoded()).toBe(0);
  });

  it('of some seconds is unpacked and listened to', async () => {
    await open('strike.mp3', 'audio/mpeg', silentMp3(3));
    await app.page.getByText(/No strikes? w/).waitFor();
    expect(await decoded()).toBe(1);
  });

  it('that was recorded in a browser, and does not say how long it is, is unpacked as well', async () => {
    await app.page.goto(app.address);
    const bytes = await app.page.evaluate(recordSilence);
    await open('take.webm', 'audio/webm', Buffer.from(bytes));
    await app.page.getByText(/No strikes? w/).waitFor();
  });

  it('is told from something that is no sound at all', async () => {
    await open('notes.mp3', 'audio/mpeg', Buffer.from('no sound at all'));
    await app.page
      .getByText('This file is not a sound that can be read here. Choose a WAV file.')
      .waitFor();
  });
});

/** In the page: two seconds of it, as its recorder writes them. */
async function recordSilence(): Promise<number[]> {
  const context = new AudioContext();
  const into = context.createMediaStreamDestination();
  const source = new ConstantSourceNode(context, { offset: 0 });
  source.connect(into);
  source.start();
  const recorder = new MediaRecorder(into.stream);
  const parts: Blob[] = [];
  recorder.ondataavailable = ({ data }) => parts.push(data);
  const over = new Promise((done) => {
    recorder.onstop = done;
  });
  recorder.start();
  setTimeout(() => recorder.stop(), 2000);
  await over;
  await context.close();
  return [...new Uint8Array(await new Blob(parts).arrayBuffer())];
}
