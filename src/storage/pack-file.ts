// Makes a file of text that comes piece by piece: gzip where the browser can, plain elsewhere.

/** Compressed bytes that are gathered before they are handed to the browser, which keeps them out of our memory. */
const gathered = 4 * 1024 * 1024;

/** The whole text as a file called `name`, with `.gz` after it where it was packed. Rejects with what `texts` throws. */
export async function packFile(texts: AsyncIterator<string>, name: string): Promise<File> {
  const isPacked = typeof CompressionStream !== 'undefined';
  const bytes = bytesOf(texts);
  const reader = (isPacked ? bytes.pipeThrough(new CompressionStream('gzip')) : bytes).getReader();
  const blobs: Blob[] = [];
  let chunks: Uint8Array<ArrayBuffer>[] = [];
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
  const type = isPacked ? 'application/gzip' : 'application/json';
  return new File(blobs, isPacked ? `${name}.gz` : name, { type });
}

function bytesOf(texts: AsyncIterator<string>): ReadableStream<Uint8Array<ArrayBuffer>> {
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
