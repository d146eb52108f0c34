// Firefox's own remote protocol: the commands of WebDriver as length-prefixed JSON over TCP
// (firefox-source-docs, "Marionette protocol", level 3).
import { once } from 'node:events';
import { connect, type Socket } from 'node:net';
import type { DriverCommands } from './driver-commands';

export interface Marionette extends DriverCommands {
  /** Begins the session; resolves to the version of the browser. */
  begin(): Promise<string>;
  /** Ends the browser in order. */
  quit(): Promise<void>;
  /** Hangs up. */
  end(): void;
}

interface Waiting {
  readonly done: (value: unknown) => void;
  readonly fail: (why: Error) => void;
}

/** Takes up the line to a Firefox that listens on `port` of this machine. */
export async function connectMarionette(port: number): Promise<Marionette> {
  const socket = connect(port, '127.0.0.1');
  await once(socket, 'connect');
  const send = sender(socket);
  return {
    begin: async () => {
      const { capabilities } = (await send('WebDriver:NewSession', {
        capabilities: { alwaysMatch: { unhandledPromptBehavior: 'ignore' } },
      })) as { readonly capabilities: { readonly browserVersion: string } };
      return capabilities.browserVersion;
    },
    navigate: async (url) => void (await send('WebDriver:Navigate', { url })),
    execute: async (script) => valueIn(await send('WebDriver:ExecuteScript', { script, args: [] })),
    act: async (actions) => void (await send('WebDriver:PerformActions', { actions })),
    sendKeys: async (id, text) => void (await send('WebDriver:ElementSendKeys', { id, text })),
    quit: async () => void (await send('Marionette:Quit', { flags: ['eAttemptQuit'] })),
    end: () => void socket.destroy(),
  };
}

const valueIn = (answer: unknown): unknown =>
  answer !== null && typeof answer === 'object' && 'value' in answer ? answer.value : null;

function sender(socket: Socket): (command: string, parameters: object) => Promise<unknown> {
  const waiting = new Map<number, Waiting>();
  let last = 0;
  let unread = Buffer.alloc(0);
  socket.on('data', (chunk) => {
    unread = Buffer.concat([unread, chunk]);
    for (;;) {
      const colon = unread.indexOf(':');
      const length = Number(unread.subarray(0, colon).toString());
      if (colon < 0 || unread.length < colon + 1 + length) return;
      const message: unknown = JSON.parse(
        unread.subarray(colon + 1, colon + 1 + length).toString(),
      );
      unread = unread.subarray(colon + 1 + length);
      // The first message is no answer: it says which protocol is spoken.
      if (!Array.isArray(message)) continue;
      const [, id, error, value] = message;
      const asked = waiting.get(id);
      waiting.delete(id);
      if (error) asked?.fail(new Error(`${error.error}: ${error.message}`));
      else asked?.done(value);
    }
  });
  const hungUp = () => {
    for (const { fail } of waiting.values()) fail(new Error('Firefox has hung up'));
    waiting.clear();
  };
  socket.on('close', hungUp);
  // "close" follows, which tells those who wait.
  socket.on('error', () => undefined);
  return (command, parameters) =>
    new Promise((done, fail) => {
      if (socket.destroyed) return fail(new Error('Firefox has hung up'));
      last += 1;
      waiting.set(last, { done, fail });
      const text = JSON.stringify([0, last, command, parameters]);
      socket.write(`${Buffer.byteLength(text)}:${text}`);
    });
}
