// Reads WAV files without resampling (RIFF/WAVE, Microsoft/IBM 1991; WAVE_FORMAT_EXTENSIBLE 2001;
// RF64, EBU Tech 3306, whose sound is taken up to the end of the file).

export type WavResult =
  | {
      readonly kind: 'wav';
      /** Mean of the channels, −1…1. */
      readonly samples: Float32Array<ArrayBuffer>;
      readonly sampleRate: number;
      readonly channels: number;
    }
  | { readonly kind: 'not-wav'; readonly why: string };

const pcm = 1;
const float = 3;
const extensible = 0xfffe;

interface Format {
  readonly code: number;
  readonly channels: number;
  readonly sampleRate: number;
  readonly bits: number;
}

const refused = (why: string): WavResult => ({ kind: 'not-wav', why });

/**
 * Samples of a WAV file: 8, 16, 24, 32-bit integer or 32, 64-bit float, any rate and channel count. A
 * file that was cut off gives what is there; a sample that is no number becomes 0. Never throws.
 */
export function readWav(bytes: ArrayBuffer): WavResult {
  const view = new DataView(bytes);
  const isWav =
    view.byteLength >= 12 && ['RIFF', 'RF64'].includes(tag(view, 0)) && tag(view, 8) === 'WAVE';
  if (!isWav) return refused('it does not begin like a WAV file');
  let format: Format | null = null;
  for (let at = 12; at + 8 <= view.byteLength; ) {
    const length = view.getUint32(at + 4, true);
    const start = at + 8;
    const available = Math.min(length, view.byteLength - start);
    if (tag(view, at) === 'fmt ') {
      format = readFormat(view, start, available);
    } else if (tag(view, at) === 'data') {
      if (!format) return refused('its sound comes before its format, or the format is damaged');
      // A recorder that was cut off never wrote the length: the sound then goes on to the end of the file.
      const unwritten = length === 0 && view.getUint32(4, true) <= 36;
      return readSamples(view, start, unwritten ? view.byteLength - start : available, format);
    }
    at = start + length + (length % 2);
  }
  return refused('it holds no sound');
}

const tag = (view: DataView, at: number): string =>
  String.fromCharCode(...[0, 1, 2, 3].map((k) => view.getUint8(at + k)));

function readFormat(view: DataView, at: number, length: number): Format | null {
  if (length < 16) return null;
  const code = view.getUint16(at, true);
  return {
    // The extensible format keeps the real code in the first two bytes of its sub-format.
    code: code === extensible && length >= 26 ? view.getUint16(at + 24, true) : code,
    channels: view.getUint16(at + 2, true),
    sampleRate: view.getUint32(at + 4, true),
    bits: view.getUint16(at + 14, true),
  };
}

function readSamples(view: DataView, at: number, length: number, format: Format): WavResult {
  const { channels, sampleRate, bits } = format;
  const read = sampleReader(view, format);
  if (!read)
    return refused(`its samples (format ${format.code}, ${bits} bits) cannot be read here`);
  if (channels < 1) return refused('it has no channel');
  if (sampleRate < 3000 || sampleRate > 768_000) {
    return refused(`its sample rate (${sampleRate} Hz) is out of range`);
  }
  const width = bits / 8;
  const count = Math.floor(length / (width * channels));
  if (count === 0) return refused('it holds no sound');
  const samples = new Float32Array(count);
  for (let n = 0; n < count; n++) {
    let sum = 0;
    for (let channel = 0; channel < channels; channel++) {
      sum += read(at + (n * channels + channel) * width);
    }
    // Rounded first: a 64-bit float may be too large for 32 bits.
    const mean = Math.fround(sum / channels);
    samples[n] = Number.isFinite(mean) ? mean : 0;
  }
  return { kind: 'wav', samples, sampleRate, channels };
}

function sampleReader(view: DataView, { code, bits }: Format): ((at: number) => number) | null {
  if (code === float && bits === 32) return (at) => view.getFloat32(at, true);
  if (code === float && bits === 64) return (at) => view.getFloat64(at, true);
  if (code !== pcm) return null;
  switch (bits) {
    case 8:
      return (at) => (view.getUint8(at) - 128) / 128;
    case 16:
      return (at) => view.getInt16(at, true) / 2 ** 15;
    case 24:
      return (at) => ((view.getInt8(at + 2) << 16) | view.getUint16(at, true)) / 2 ** 23;
    case 32:
      return (at) => view.getInt32(at, true) / 2 ** 31;
    default:
      return null;
  }
}
