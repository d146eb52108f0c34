import { describe, expect, it } from 'vitest';
import { readWav } from '../../src/dsp/read-wav';
import * as fc from '../properties';

// Layout by hand, after "Multimedia Programming Interface and Data Specifications 1.0" (IBM and Microsoft,
// 1991), chapter WAVE, and the Microsoft documentation of WAVEFORMATEXTENSIBLE; from memory.
const text = (word: string): number[] => [...word].map((letter) => letter.charCodeAt(0));
const u16 = (value: number): number[] => [value & 255, (value >> 8) & 255];
const u32 = (value: number): number[] => [...u16(value & 0xffff), ...u16(value >>> 16)];
const chunk = (name: string, content: number[]): number[] => [
  ...text(name),
  ...u32(content.length),
  ...content,
  ...(content.length % 2 ? [0] : []),
];
const floats = (values: number[], bits: 32 | 64): number[] => {
  const array = bits === 32 ? new Float32Array(values) : new Float64Array(values);
  return [...new Uint8Array(array.buffer)];
};

interface Described {
  readonly code: number;
  readonly bits: number;
  readonly channels?: number;
  readonly rate?: number;
}
const fmt = ({ code, bits, channels = 1, rate = 44_100 }: Described): number[] => {
  const frame = (channels * bits) / 8;
  return [
    ...u16(code),
    ...u16(channels),
    ...u32(rate),
    ...u32(rate * frame),
    ...u16(frame),
    ...u16(bits),
  ];
};
const file = (...chunks: number[][]): ArrayBuffer => {
  const body = [...text('WAVE'), ...chunks.flat()];
  return new Uint8Array([...text('RIFF'), ...u32(body.length), ...body]).buffer;
};
const read = (bytes: ArrayBuffer) => {
  const result = readWav(bytes);
  if (result.kind !== 'wav') throw new Error(`refused: ${result.why}`);
  return { ...result, samples: [...result.samples] };
};
const refusal = (bytes: ArrayBuffer): string => {
  const result = readWav(bytes);
  return result.kind === 'not-wav' ? result.why : 'was read';
};

describe('a WAV file', () => {
  it('is read from 8-bit integers, which count from 128', () => {
    const bytes = file(chunk('fmt ', fmt({ code: 1, bits: 8 })), chunk('data', [0, 128, 192]));
    expect(read(bytes).samples).toEqual([-1, 0, 0.5]);
  });

  it('is read from 16-bit integers', () => {
    const data = [...u16(0x8000), ...u16(0), ...u16(0x4000), ...u16(0xffff)];
    const bytes = file(chunk('fmt ', fmt({ code: 1, bits: 16 })), chunk('data', data));
    expect(read(bytes).samples).toEqual([-1, 0, 0.5, -1 / 2 ** 15]);
  });

  it('is read from 24-bit integers, with their sign', () => {
    const data = [0, 0, 0x80, 0, 0, 0x40, 0xff, 0xff, 0xff, 1, 0, 0];
    const bytes = file(chunk('fmt ', fmt({ code: 1, bits: 24 })), chunk('data', data));
    expect(read(bytes).samples).toEqual([-1, 0.5, -1 / 2 ** 23, 1 / 2 ** 23]);
  });

  it('is read from 32-bit integers', () => {
    const data = [0, 0, 0, 0x80, 0, 0, 0, 0x40];
    const bytes = file(chunk('fmt ', fmt({ code: 1, bits: 32 })), chunk('data', data));
    expect(read(bytes).samples).toEqual([-1, 0.5]);
  });

  it.each([32, 64] as const)('is read from %i-bit floats', (bits) => {
    const data = floats([-0.75, 0, 0.1], bits);
    const bytes = file(chunk('fmt ', fmt({ code: 3, bits })), chunk('data', data));
    expect(read(bytes).samples).toEqual([-0.75, 0, Math.fround(0.1)]);
  });

  it('is read from the extensible format by its sub-format', () => {
    // 22 more bytes: valid bits, speaker positions, sub-format GUID beginning with the code.
    const guid = [...u16(3), 0, 0, 0, 0, 0x10, 0, 0x80, 0, 0, 0xaa, 0, 0x38, 0x9b, 0x71];
    const more = [...u16(22), ...u16(32), ...u32(4), ...guid];
    const bytes = file(
      chunk('fmt ', [...fmt({ code: 0xfffe, bits: 32 }), ...more]),
      chunk('data', floats([0.25], 32)),
    );
    expect(read(bytes).samples).toEqual([0.25]);
  });

  it('keeps its own sample rate and becomes the mean of its channels', () => {
    const bytes = file(
      chunk('fmt ', fmt({ code: 3, bits: 32, channels: 3, rate: 96_000 })),
      chunk('data', floats([0.5, 0.25, 0, -0.5, -1, 0], 32)),
    );
    expect(read(bytes)).toEqual({
      kind: 'wav',
      samples: [0.25, -0.5],
      sampleRate: 96_000,
      channels: 3,
    });
  });

  it('may hold other chunks, also of odd length, before its sound', () => {
    const bytes = file(
      chunk('LIST', [1, 2, 3]),
      chunk('fmt ', fmt({ code: 1, bits: 16 })),
      chunk('note', [9]),
      chunk('data', u16(0x4000)),
      chunk('tail', [1]),
    );
    expect(read(bytes).samples).toEqual([0.5]);
  });

  it('that was cut off gives what is there', () => {
    const data = [...u16(0x4000), ...u16(0x2000), ...u16(0x1000)];
    const whole = file(chunk('fmt ', fmt({ code: 1, bits: 16 })), chunk('data', data));
    expect(read(whole.slice(0, -3)).samples).toEqual([0.5]);
  });

  it('whose recorder never wrote its lengths is read to its end', () => {
    const head = chunk('fmt ', fmt({ code: 1, bits: 16 }));
    const body = [...text('WAVE'), ...head, ...text('data'), ...u32(0), ...u16(0x4000)];
    const bytes = new Uint8Array([...text('RIFF'), ...u32(0), ...body]);
    expect(read(bytes.buffer).samples).toEqual([0.5]);
  });

  it('larger than 4 GB by its name (RF64, EBU Tech 3306) is read', () => {
    const bytes = new Uint8Array(
      file(chunk('fmt ', fmt({ code: 1, bits: 16 })), chunk('data', u16(0x4000))),
    );
    bytes.set(text('RF64'));
    expect(read(bytes.buffer).samples).toEqual([0.5]);
  });

  it('with samples that are no numbers has silence there', () => {
    const bytes = file(
      chunk('fmt ', fmt({ code: 3, bits: 64 })),
      chunk('data', floats([Number.NaN, Number.POSITIVE_INFINITY, 1e300, 0.5], 64)),
    );
    expect(read(bytes).samples).toEqual([0, 0, 0, 0.5]);
  });
});

describe('a file that is no readable WAV', () => {
  const format = chunk('fmt ', fmt({ code: 1, bits: 16 }));

  it('is refused with a reason', () => {
    expect(refusal(new ArrayBuffer(0))).toContain('does not begin');
    expect(refusal(new Uint8Array(text('OggS and so on')).buffer)).toContain('does not begin');
    expect(refusal(file(format))).toContain('holds no sound');
    expect(refusal(file(format, chunk('data', [])))).toContain('holds no sound');
    expect(refusal(file(chunk('data', [1, 2]), format))).toContain('format');
  });

  it('is refused where its samples are compressed', () => {
    // 6 is A-law in the list of wave format tags.
    const compressed = chunk('fmt ', fmt({ code: 6, bits: 8 }));
    expect(refusal(file(compressed, chunk('data', [1, 2])))).toContain('cannot be read');
  });

  it('is refused where no channel or no possible rate is named', () => {
    const data = chunk('data', [1, 2]);
    const none = chunk('fmt ', fmt({ code: 1, bits: 16, channels: 0 }));
    expect(refusal(file(none, data))).toContain('channel');
    const slow = chunk('fmt ', fmt({ code: 1, bits: 16, rate: 1 }));
    expect(refusal(file(slow, data))).toContain('rate');
  });
});

describe('any bytes', () => {
  const junk = fc.uint8Array({ maxLength: 200 });
  const format = fc
    .record({
      code: fc.constantFrom(1, 1, 3, 3, 6, 0xfffe),
      bits: fc.constantFrom(1, 8, 16, 24, 32, 32, 64),
      channels: fc.nat(3),
      rate: fc.constantFrom(8000, 44_100, 2 ** 32 - 1),
    })
    .map(fmt);
  const anyFile = fc.oneof(
    junk.map((bytes) => new Uint8Array(bytes).buffer),
    fc
      .record({
        format,
        data: fc.uint8Array({ minLength: 40, maxLength: 200 }),
        end: fc.integer({ min: 40, max: 300 }),
      })
      .map(({ format: described, data, end }) =>
        file(chunk('fmt ', described), chunk('data', [...data])).slice(0, end),
      ),
  );

  it('never make it throw, and what is read is finite', () => {
    let wavs = 0;
    fc.assert(
      fc.property(anyFile, (bytes) => {
        const result = readWav(bytes);
        if (result.kind === 'not-wav') return;
        wavs++;
        expect(result.samples.every(Number.isFinite)).toBe(true);
      }),
      { numRuns: 500 },
    );
    expect(wavs).toBeGreaterThan(20);
  });
});
