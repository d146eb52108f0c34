// Makes a file of text that comes piece by piece: gzip where the browser can, plain where it cannot or is asked for text.
import type { FileForm } from '../../domain/ports/file-handout';

/**
 * Bytes that are gathered before they are handed to the browser, which keeps them out of our memory (chosen, no
 * source).
 */
const gathered = 4 * 1024 * 1024;
/** Larger text is packed anyway: Chromium passes on at most 50 MB, and mail far less. */
const longestText = 40 * 1024 * 1024;

type Bytes = Uint8Array<ArrayBuffer>;

/**
 * The whole text as a file called `name`, with `.gz` after it where it was packed and `.txt` where text was asked
 * for. Rejects with what `texts` throws.
 */
export async function packFile(
  texts: AsyncIterator<string>,
  name: string,
  form: FileForm,
): Promise<File> {
  const bytes = bytesOf(texts);
  if (form === 'packed') return packed(bytes, name);
  const text = await gather(bytes);
  if (text.size > longestText) return packed(text.stream(), name);
  return new File([text], `${name}.txt`, { type: 'text/plain' });
}

async function packed(bytes: ReadableStream<Bytes>, name: string): Promise<File> {
  if (typeof CompressionStream === 'undefined') {
    return new File([await gather(bytes)], name, { type: 'application/json' });
  }
  const blob = await gather(bytes.pipeThrough(new CompressionStream('gzip')));
  return new File([blob], `${name}.gz`, { type: 'application/gzip' });
}

async function gather(bytes: ReadableStream<Bytes>): Promise<Blob> {
  const reader = bytes.getReader();
  const blobs: Blob[] = [];
  let chunks: Bytes[] = [];
  let size = 0;
  for (;;) {
    const { done, value } = await reader.read();
    if (value) {
      chunks.push(value);
      size += value.length;
    }
    if (done || size >= gathered) {
      blobs.push(new Blob(chunks));
      chunks = [];
      size = 0;
    }
    if (done) break;
  }
  return new Blob(blobs);
}

function bytesOf(texts: AsyncIterator<string>): ReadableStream<Bytes> {
  const encoder = new TextEncoder();
  return new ReadableStream(
    {
      async pull(controller) {
        const { done, value } = await texts.next();
        if (done) controller.close();
        else controller.enqueue(encoder.encode(value));
      },
    },
    // One piece at a time: the next is made when this one is packed.
    { highWaterMark: 0 },
  );
}
