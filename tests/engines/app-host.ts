// The host of the app: it can go away, come back, and bring another version, always at the same address.
import type { Server } from 'node:net';
import { createStaticServer, listenOn } from '../../src/command-line/static-server.mjs';

export class AppHost {
  #server: ReturnType<typeof createStaticServer> | null = null;
  #port = 0;

  get address(): string {
    return `http://localhost:${this.#port}/`;
  }

  /** Serves `directory` from now on. */
  async serve(directory: string): Promise<void> {
    await this.stop();
    const server = createStaticServer({ directory });
    const port = await listenOn(server, this.#port, 'localhost');
    this.#server = server;
    if (this.#port !== 0 && port !== this.#port) {
      await this.stop();
      throw new Error(`another program has taken port ${this.#port}`);
    }
    this.#port = port;
  }

  /** Nobody answers any more. */
  async stop(): Promise<void> {
    const server = this.#server;
    this.#server = null;
    if (!server) return;
    server.closeAllConnections();
    await new Promise((done) => (server satisfies Server).close(done));
  }
}
