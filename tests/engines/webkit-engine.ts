// WebKit: a window of our own (webkit-window.js) behind WebKitWebDriver, because the driver's own browser forgets
// everything when it is closed.
import { existsSync, mkdirSync } from 'node:fs';
import { createServer } from 'node:net';
import { join } from 'node:path';
import { listenOn } from '../../src/command-line/static-server.mjs';
import { drivenPage } from './driver-commands';
import type { Engine } from './engine';
import { startProcess } from './own-process';
import { until } from './until';
import { beginSession } from './web-driver';

const startLimit = 60_000;

export const webkitEngine = (windowScript: string): Engine => ({
  name: 'WebKitGTK',
  async start({ environment, profile, outbox }) {
    mkdirSync(profile, { recursive: true });
    const port = await freePort();
    const driver = startProcess('WebKitWebDriver', [`--port=${port}`], {
      ...environment,
      // There is no graphics card behind this screen.
      WEBKIT_DISABLE_DMABUF_RENDERER: '1',
      LIBGL_ALWAYS_SOFTWARE: '1',
      NO_AT_BRIDGE: '1',
      // Nor a desktop, whose message bus would be started and left behind.
      DBUS_SESSION_BUS_ADDRESS: 'disabled:',
    });
    try {
      const session = await until(
        'WebKit to start',
        () =>
          beginSession(`http://127.0.0.1:${port}`, {
            'webkitgtk:browserOptions': {
              binary: 'gjs',
              args: ['-m', windowScript, profile, outbox],
            },
          }),
        startLimit,
      );
      const pdf = join(outbox, 'printed.pdf');
      return {
        version: session.version,
        ...drivenPage(session),
        // The window writes it under another name until it is whole.
        printed: async () => (existsSync(pdf) ? pdf : null),
        async close() {
          // The driver ends the browser with the session; without an answer the next line does.
          await session.end().catch(() => undefined);
          await driver.stop();
        },
      };
    } catch (error) {
      await driver.stop();
      throw error;
    }
  },
});

/** A port that was free a moment ago. */
async function freePort(): Promise<number> {
  const server = createServer();
  const port = await listenOn(server, 0, '127.0.0.1');
  await new Promise((done) => server.close(done));
  return port;
}
