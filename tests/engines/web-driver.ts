// A client of the W3C WebDriver standard over HTTP, with the few commands that the walks need.
import type { DriverCommands } from './driver-commands';

export interface WebDriverSession extends DriverCommands {
  /** Version of the browser. */
  readonly version: string;
  /** Ends the browser. */
  end(): Promise<void>;
}

/** How long (ms) an answer may take. */
const answerLimit = 30_000;

/** Has the driver at `address` start a browser. */
export async function beginSession(
  address: string,
  capabilities: Readonly<Record<string, unknown>>,
): Promise<WebDriverSession> {
  const { sessionId, capabilities: given } = (await send('POST', `${address}/session`, {
    capabilities: { alwaysMatch: capabilities },
  })) as { readonly sessionId: string; readonly capabilities: { readonly browserVersion: string } };
  const session = `${address}/session/${sessionId}`;
  const post = (path: string, body: object) => send('POST', `${session}/${path}`, body);
  return {
    version: given.browserVersion,
    navigate: async (url) => void (await post('url', { url })),
    execute: (script) => post('execute/sync', { script, args: [] }),
    act: async (actions) => void (await post('actions', { actions })),
    sendKeys: async (element, text) => void (await post(`element/${element}/value`, { text })),
    end: async () => void (await send('DELETE', session)),
  };
}

async function send(method: 'POST' | 'DELETE', url: string, body?: object): Promise<unknown> {
  const response = await fetch(url, {
    method,
    ...(body ? { body: JSON.stringify(body) } : {}),
    signal: AbortSignal.timeout(answerLimit),
  });
  const { value } = (await response.json()) as { readonly value: unknown };
  if (response.ok) return value;
  const { error, message } = value as { readonly error: string; readonly message: string };
  throw new Error(`${error}: ${message}`);
}
