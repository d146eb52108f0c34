/** A WAV file (32-bit float, one channel) of `samples` −1…1. Layout: WAVE format tag 3, EA IFF 85 chunks. */
export function floatWav(samples: Float32Array, sampleRate: number): Uint8Array<ArrayBuffer> {
  const bytes = new Uint8Array(44 + 4 * samples.length);
  const view = new DataView(bytes.buffer);
  const text = (at: number, word: string) => {
    for (let n = 0; n < word.length; n++) view.setUint8(at + n, word.charCodeAt(n));
  };
  text(0, 'RIFF');
  view.setUint32(4, 36 + 4 * samples.length, true);
  text(8, 'WAVEfmt ');
  view.setUint32(16, 16, true);
  view.setUint16(20, 3, true);
  view.setUint16(22, 1, true);
  view.setUint32(24, sampleRate, true);
  view.setUint32(28, 4 * sampleRate, true);
  view.setUint16(32, 4, true);
  view.setUint16(34, 32, true);
  text(36, 'data');
  view.setUint32(40, 4 * samples.length, true);
  samples.forEach((sample, n) => {
    view.setFloat32(44 + 4 * n, sample, true);
  });
  return bytes;
}
