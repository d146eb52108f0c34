// Reads a form that anybody may have sent, and never more of it than is allowed.

export class LongerThanAllowed extends Error {
  override readonly name = 'LongerThanAllowed';
}

/** Rejects with `LongerThanAllowed` as soon as more than `most` bytes have come, and otherwise if it is no form. */
export async function limitedForm(request: Request, most: number): Promise<FormData> {
  // Firefox does not show a request's body here. It has no share sheet either: only a page can have sent this.
  if (!request.body) throw new LongerThanAllowed();
  let bytes = 0;
  let isTooLong = false;
  const counted = request.body.pipeThrough(
    new TransformStream<Uint8Array, Uint8Array>({
      transform(chunk, controller) {
        bytes += chunk.byteLength;
        isTooLong = bytes > most;
        if (isTooLong) controller.error(new LongerThanAllowed());
        else controller.enqueue(chunk);
      },
    }),
  );
  const type = request.headers.get('Content-Type') ?? '';
  try {
    return await new Response(counted, { headers: { 'Content-Type': type } }).formData();
  } catch (error) {
    // Browsers hide what the stream has failed with.
    throw isTooLong ? new LongerThanAllowed() : error;
  }
}
