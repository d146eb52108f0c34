// A screen that nobody sees, for the window of WebKit.
import { startProcess } from './own-process';
import { until } from './until';

export interface Screen {
  /** As DISPLAY has it. */
  readonly display: string;
  stop(): Promise<void>;
}

const startLimit = 20_000;

/** Starts a screen with the first free number. Stop it in the end. */
export async function startScreen(environment: Readonly<Record<string, string>>): Promise<Screen> {
  const server = startProcess(
    'Xvfb',
    ['-displayfd', '1', '-screen', '0', '800x1000x24', '-nolisten', 'tcp'],
    environment,
  );
  try {
    const display = await until(
      'the screen',
      () => /^(\d+)$/m.exec(server.said())?.[1],
      startLimit,
    );
    return { display: `:${display}`, stop: () => server.stop() };
  } catch (error) {
    await server.stop();
    throw new Error(`${String(error)} ${server.said()}`);
  }
}
