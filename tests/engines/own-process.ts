// Programs that the walks start: each in a process group of its own, so that it ends with all its helpers.
import { type ChildProcess, spawn } from 'node:child_process';

export interface OwnProcess {
  /** What it has written so far, both streams. */
  said(): string;
  hasEnded(): boolean;
  /** Resolves to its exit code; null if a signal ended it. */
  readonly ended: Promise<number | null>;
  /** Asks it to end, and ends its whole group if it does not. Never rejects. */
  stop(): Promise<void>;
}

/** All that have been started and have not ended. */
const running = new Set<OwnProcess>();

/** Ends all programs that were started here, for when this one is told to end. */
export async function stopEverything(): Promise<void> {
  await Promise.all([...running].map((each) => each.stop()));
}

/** How long (ms) a program may take to end by itself. */
const patience = 3000;
/** Letters of its output that are kept. */
const mostSaid = 20_000;

/** Starts `program`; `input` is what it reads, which is nothing without it. Stop it in the end. */
export function startProcess(
  program: string,
  parameters: readonly string[],
  environment: Readonly<Record<string, string>>,
  input?: NodeJS.ReadableStream,
): OwnProcess {
  const child = spawn(program, parameters, {
    detached: true,
    env: { ...process.env, ...environment },
    stdio: [input ? 'pipe' : 'ignore', 'pipe', 'pipe'],
  });
  let said = '';
  const hear = (chunk: Buffer) => {
    said = (said + chunk.toString()).slice(-mostSaid);
  };
  child.stdout?.on('data', hear);
  child.stderr?.on('data', hear);
  const ended = new Promise<number | null>((done) => {
    child.once('error', (error) => {
      said += error.message;
      done(127);
    });
    child.once('exit', done);
  }).finally(() => running.delete(started));
  if (input && child.stdin) {
    // A reader that ends earlier than what it is given is no error of ours.
    child.stdin.on('error', (error) => hear(Buffer.from(error.message)));
    input.pipe(child.stdin);
  }
  const hasEnded = () => child.exitCode !== null || child.signalCode !== null || !child.pid;
  const started: OwnProcess = {
    said: () => said,
    hasEnded,
    ended,
    async stop() {
      if (hasEnded()) return;
      signalGroup(child, 'SIGTERM');
      const late = setTimeout(() => signalGroup(child, 'SIGKILL'), patience);
      await ended;
      clearTimeout(late);
      // Its helpers may still be there.
      signalGroup(child, 'SIGKILL');
    },
  };
  running.add(started);
  return started;
}

/** Runs `program` to its end; resolves to what it said, rejects if it fails or takes longer than `limit` (ms). */
export async function runToEnd(
  program: string,
  parameters: readonly string[],
  environment: Readonly<Record<string, string>>,
  limit: number,
): Promise<string> {
  const child = startProcess(program, parameters, environment);
  const late = setTimeout(() => void child.stop(), limit);
  const code = await child.ended;
  clearTimeout(late);
  if (code !== 0) throw new Error(`${program} ended with ${code}: ${child.said().trim()}`);
  return child.said();
}

function signalGroup({ pid }: ChildProcess, signal: NodeJS.Signals): void {
  if (pid === undefined) return;
  try {
    process.kill(-pid, signal);
  } catch (error) {
    // Nobody is left in it.
    if (!(error instanceof Error && 'code' in error && error.code === 'ESRCH')) throw error;
  }
}
