// The copy of one version of the app: every file is checked before it is kept, and again whenever it is given out.
import { fetchListed, WrongAnswer } from './fetch-listed';
import { hashOf, keptAnswer, type ListedFile } from './listed-file';
import { OlderCopies } from './older-copies';

export interface CopyPlace {
  /** Address of the app's folder, with its last slash. */
  readonly scope: string;
  readonly caches: CacheStorage;
  readonly fetch: typeof fetch;
}

/** What `mend` did: files that were wrong or gone and are right again, and those that could not be had. */
export interface Mended {
  readonly mended: readonly string[];
  readonly missing: readonly string[];
}

export class VerifiedCopy {
  readonly older: OlderCopies;
  readonly #files: ReadonlyMap<string, ListedFile>;
  readonly #name: string;

  /** `version` tells this list from those of other versions. */
  constructor(
    files: readonly ListedFile[],
    version: string,
    readonly place: CopyPlace,
  ) {
    this.#files = new Map(files.map((file) => [file.path, file]));
    this.older = new OlderCopies(version, place);
    this.#name = this.older.ownName;
  }

  /** True for the files of this version. */
  has(path: string): boolean {
    return this.#files.has(path);
  }

  /**
   * Keeps every file. Rejects with `WrongAnswer` if the network gave anything but the files, otherwise with why they
   * could not be had or kept. What was kept by then is right, and is not fetched again by the next try.
   */
  async fill(): Promise<void> {
    const cache = await this.place.caches.open(this.#name);
    const tries = await Promise.allSettled(
      [...this.#files.values()].map(async (file) => {
        if (!(await this.#kept(cache, file))) await this.#renew(cache, file);
      }),
    );
    const reasons = tries.flatMap((each) => (each.status === 'rejected' ? [each.reason] : []));
    if (reasons.length > 0) {
      throw reasons.find((reason) => reason instanceof WrongAnswer) ?? reasons[0];
    }
  }

  /** The file, from the copy if it is right there, otherwise from the network; null if neither has it. */
  async take(path: string): Promise<Response | null> {
    const file = this.#files.get(path);
    if (!file) return null;
    const cache = await this.place.caches.open(this.#name);
    const kept = await this.#kept(cache, file);
    if (kept) return kept;
    let answer: Response;
    try {
      answer = await this.#obtain(file);
    } catch {
      // Whoever asks gets the same answer as without a network: this file is not to be had.
      return null;
    }
    // A full phone does not keep it, but the file is right all the same.
    await cache.put(this.addressOf(path), answer.clone()).catch(() => undefined);
    return answer;
  }

  /** Looks at every file, and puts right what is wrong or gone. */
  async mend(): Promise<Mended> {
    const cache = await this.place.caches.open(this.#name);
    const mended: string[] = [];
    const missing: string[] = [];
    await Promise.all(
      [...this.#files.values()].map(async (file) => {
        if (await this.#kept(cache, file)) return;
        const into = await this.#renew(cache, file).then(
          () => mended,
          () => missing,
        );
        into.push(file.path);
      }),
    );
    return { mended, missing };
  }

  /** True if every file is here and right, and `parts` (paths) belong to this version. */
  async isWhole(parts: readonly string[]): Promise<boolean> {
    if (!parts.every((part) => this.#files.has(part))) return false;
    const cache = await this.place.caches.open(this.#name);
    const kept = await Promise.all(
      [...this.#files.values()].map((file) => this.#kept(cache, file)),
    );
    return kept.every((answer) => answer !== null);
  }

  addressOf(path: string): string {
    return new URL(path, this.place.scope).href;
  }

  /** The kept file if it is what the build made; what is not is thrown away. */
  async #kept(cache: Cache, file: ListedFile): Promise<Response | null> {
    const address = this.addressOf(file.path);
    const answer = await cache.match(address, { ignoreVary: true });
    if (!answer) return null;
    // A body that the disk has lost rejects here: no better than a wrong one.
    const hash = await answer
      .clone()
      .arrayBuffer()
      .then(hashOf, () => '');
    if (answer.ok && hash === file.hash) return answer;
    await cache.delete(address);
    return null;
  }

  async #renew(cache: Cache, file: ListedFile): Promise<void> {
    await cache.put(this.addressOf(file.path), await this.#obtain(file));
  }

  /** From an older copy that has the same file, or from the network. */
  async #obtain(file: ListedFile): Promise<Response> {
    const bytes =
      (await this.older.bytesOf(file)) ??
      (await fetchListed(file, this.addressOf(file.path), this.place.fetch));
    return keptAnswer(file, bytes);
  }
}
