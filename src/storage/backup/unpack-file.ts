// Reads a file, gzip or plain, as text piece by piece, without ever holding much more than a piece.

/** Bytes read from the file at once (chosen, no source). */
const readAtOnce = 1024 * 1024;
/** Bytes unpacked at once: gzip grows by at most about a thousand (RFC 1951 allows 1,032), and a browser hands out all of it. */
const unpackedAtOnce = 8 * 1024;

/** The file is larger, or grows more in unpacking, than any backup does. */
export class TooLarge extends Error {
  override readonly name = 'TooLarge';
}

/** This browser cannot unpack gzip. */
export class CannotUnpack extends Error {
  override readonly name = 'CannotUnpack';
}

export interface UnpackLimits {
  /** Size of the file as it is. */
  readonly fileBytes: number;
  /** How many times larger than the packed bytes the text may be; JSON of readings is about five times larger. */
  readonly growth: number;
  /** Bytes of text for which `growth` is not looked at. */
  readonly freeBytes: number;
}

export const unpackLimits: UnpackLimits = {
  fileBytes: 2 ** 30,
  growth: 60,
  freeBytes: 1024 * 1024,
};

export interface TextPiece {
  readonly text: string;
  /** Bytes of the file read so far. */
  readonly read: number;
}

/**
 * The text of `file`. A packed file that is damaged simply ends there: what can be unpacked is given out. Rejects
 * with `TooLarge` or `CannotUnpack`, or when the phone cannot read the file.
 */
export async function* unpackText(
  file: Blob,
  limits: UnpackLimits = unpackLimits,
): AsyncGenerator<TextPiece> {
  if (file.size > limits.fileBytes) throw new TooLarge();
  const isPacked = await isGzip(file);
  if (isPacked && typeof DecompressionStream === 'undefined') throw new CannotUnpack();
  const progress = { read: 0 };
  const bytes = isPacked ? unpacked(file, limits, progress) : piecesOf(file, progress);
  const decoder = new TextDecoder();
  for await (const piece of bytes) {
    yield { text: decoder.decode(piece, { stream: true }), read: progress.read };
  }
  yield { text: decoder.decode(), read: file.size };
}

async function isGzip(file: Blob): Promise<boolean> {
  const [first, second] = new Uint8Array(await file.slice(0, 2).arrayBuffer());
  return first === 0x1f && second === 0x8b;
}

async function* piecesOf(
  file: Blob,
  progress: { read: number },
): AsyncGenerator<Uint8Array<ArrayBuffer>> {
  for (let from = 0; from < file.size; from += readAtOnce) {
    const piece = new Uint8Array(await file.slice(from, from + readAtOnce).arrayBuffer());
    progress.read = from + piece.length;
    yield piece;
  }
}

async function* unpacked(
  file: Blob,
  { growth, freeBytes }: UnpackLimits,
  progress: { read: number },
): AsyncGenerator<Uint8Array> {
  const stream = new DecompressionStream('gzip');
  const reader = stream.readable.getReader();
  const fed = { bytes: 0, isUnreadable: false };
  const feeding = feed(stream.writable.getWriter(), file, progress, fed);
  let unpackedBytes = 0;
  try {
    for (;;) {
      const value = await next(reader, fed);
      if (!value) return;
      unpackedBytes += value.length;
      if (unpackedBytes > freeBytes + growth * fed.bytes) throw new TooLarge();
      yield value;
    }
  } finally {
    await reader.cancel().catch(() => undefined);
    await feeding;
  }
}

/** What was unpacked next, or null at the end, also where the damaged file ends. Rejects when the file cannot be read. */
async function next(
  reader: ReadableStreamDefaultReader<Uint8Array>,
  fed: { readonly isUnreadable: boolean },
): Promise<Uint8Array | null> {
  try {
    return (await reader.read()).value ?? null;
  } catch (error) {
    if (fed.isUnreadable) throw error;
    return null;
  }
}

/** Feeds the file to the unpacker; ends silently when the unpacker has failed or is no longer wanted. */
async function feed(
  writer: WritableStreamDefaultWriter<BufferSource>,
  file: Blob,
  progress: { read: number },
  fed: { bytes: number; isUnreadable: boolean },
): Promise<void> {
  try {
    for await (const piece of readable(file, progress, fed)) {
      for (let from = 0; from < piece.length; from += unpackedAtOnce) {
        const part = piece.subarray(from, from + unpackedAtOnce);
        fed.bytes += part.length;
        await writer.write(part);
      }
    }
    // Waits until everything before has been taken out: what is left in a stream when its end turns out wrong is lost.
    await writer.write(new Uint8Array(0));
    await writer.close();
  } catch (error) {
    await writer.abort(error).catch(() => undefined);
  }
}

async function* readable(
  file: Blob,
  progress: { read: number },
  fed: { isUnreadable: boolean },
): AsyncGenerator<Uint8Array<ArrayBuffer>> {
  try {
    yield* piecesOf(file, progress);
  } catch (error) {
    fed.isUnreadable = true;
    throw error;
  }
}
