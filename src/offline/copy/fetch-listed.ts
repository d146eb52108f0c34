// A file of this version from the network, or the reason why it cannot be had.
import { hashOf, type ListedFile } from './listed-file';

/** The network gave something else than the file: a portal's page, a part of it, another version, an error's page. */
export class WrongAnswer extends Error {
  override readonly name = 'WrongAnswer';
}

/** The network gave nothing at all. */
export class NoAnswer extends Error {
  override readonly name = 'NoAnswer';
}

/** Resolves to the bytes of the file at `address`, checked; rejects with `WrongAnswer` or `NoAnswer`. */
export async function fetchListed(
  { path, hash }: ListedFile,
  address: string,
  ask: typeof fetch,
): Promise<ArrayBuffer> {
  let answer: Response;
  try {
    // Past the browser's own cache, which may hold what the network gave wrongly before.
    answer = await ask(address, { cache: 'no-store', credentials: 'same-origin' });
  } catch {
    throw new NoAnswer(path);
  }
  if (!answer.ok) throw new WrongAnswer(`${path}: status ${answer.status}`);
  let bytes: ArrayBuffer;
  try {
    bytes = await answer.arrayBuffer();
  } catch {
    // The answer said how long it is, and broke off before.
    throw new WrongAnswer(`${path}: broken off`);
  }
  if ((await hashOf(bytes)) !== hash) throw new WrongAnswer(`${path}: other content`);
  return bytes;
}
