// A cache storage of memory, as strict as a browser's where it matters: addresses are compared whole, bodies are copied.

class MemoryCache {
  readonly kept = new Map<string, { body: ArrayBuffer; headers: Headers; status: number }>();
  /** What the next `put` fails with. */
  full: Error | null = null;

  async match(address: string): Promise<Response | undefined> {
    const found = this.kept.get(address);
    return found && new Response(found.body.slice(0), found);
  }

  async put(address: string, answer: Response): Promise<void> {
    if (this.full) throw this.full;
    const { headers, status } = answer;
    this.kept.set(address, { body: await answer.arrayBuffer(), headers, status });
  }

  async delete(address: string): Promise<boolean> {
    return this.kept.delete(address);
  }
}

export class MemoryCaches {
  readonly opened = new Map<string, MemoryCache>();

  async open(name: string): Promise<MemoryCache> {
    const cache = this.opened.get(name) ?? new MemoryCache();
    this.opened.set(name, cache);
    return cache;
  }

  async keys(): Promise<string[]> {
    return [...this.opened.keys()];
  }

  async delete(name: string): Promise<boolean> {
    return this.opened.delete(name);
  }

  /** As the type that the browser's own has. */
  asStorage(): CacheStorage {
    return this as unknown as CacheStorage;
  }
}
