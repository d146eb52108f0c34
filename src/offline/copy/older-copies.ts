// Copies of other versions: a window that was opened with one still takes its late screens from it.
import { hashHeader, hashOf, type ListedFile } from './listed-file';
import type { CopyPlace } from './verified-copy';

export class OlderCopies {
  readonly ownName: string;
  readonly #prefix: string;
  /** What versions before this worker kept, with Workbox and without hashes. */
  readonly #first: string;

  constructor(
    version: string,
    readonly place: CopyPlace,
  ) {
    // Another folder of the same host may hold the app once more.
    this.#prefix = `ringwright-copy ${place.scope} `;
    this.ownName = `${this.#prefix}${version}`;
    this.#first = `workbox-precache-v2-${place.scope}`;
  }

  /** A file that only another version has, as it was when it was kept; null if there is none. */
  async take(address: string): Promise<Response | null> {
    for (const cache of await this.#open()) {
      const answer = await cache.match(address, { ignoreVary: true });
      if (!answer) continue;
      const hash = await answer
        .clone()
        .arrayBuffer()
        .then(hashOf, () => '');
      if (hash === (answer.headers.get(hashHeader) ?? hash)) return answer;
    }
    return null;
  }

  /** The bytes of a file that is the same in another version; null if none has it, or only a wrong one. */
  async bytesOf({ path, hash }: ListedFile): Promise<ArrayBuffer | null> {
    const address = new URL(path, this.place.scope).href;
    for (const cache of await this.#open()) {
      const answer = await cache.match(address, { ignoreVary: true });
      const bytes = await answer?.arrayBuffer().catch(() => undefined);
      if (bytes && (await hashOf(bytes)) === hash) return bytes;
    }
    return null;
  }

  async deleteAll(): Promise<void> {
    for (const name of await this.#names()) await this.place.caches.delete(name);
  }

  async #open(): Promise<readonly Cache[]> {
    return Promise.all((await this.#names()).map((name) => this.place.caches.open(name)));
  }

  async #names(): Promise<readonly string[]> {
    const names = await this.place.caches.keys();
    return names.filter(
      (name) => name === this.#first || (name.startsWith(this.#prefix) && name !== this.ownName),
    );
  }
}
