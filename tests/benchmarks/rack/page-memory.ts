// How much memory a page takes while it works: its JavaScript heap, and on Linux its whole process.
import { readFileSync, writeFileSync } from 'node:fs';
import type { CDPSession, Page } from 'playwright-core';

export interface PeakMemory {
  /** Largest JavaScript heap seen, asked for ten times a second; array buffers are not in it. */
  readonly heapBytes: number;
  /** Largest resident size of the page's process as the kernel saw it, or null where there is no /proc. */
  readonly processBytes: number | null;
}

/** Runs `work` and watches the page meanwhile. */
export async function withPeakMemory<T>(
  page: Page,
  work: () => Promise<T>,
): Promise<{ readonly value: T; readonly peak: PeakMemory; readonly before: PeakMemory }> {
  const session = await page.context().newCDPSession(page);
  const pid = await rendererOf(page);
  await session.send('HeapProfiler.collectGarbage');
  resetPeak(pid);
  const before = { heapBytes: await heapOf(session), processBytes: peakOf(pid) };
  let heapBytes = before.heapBytes;
  let isOver = false;
  const watching = (async () => {
    while (!isOver) {
      heapBytes = Math.max(heapBytes, await heapOf(session));
      await new Promise((done) => setTimeout(done, 100));
    }
  })();
  try {
    const value = await work();
    return { value, before, peak: { heapBytes, processBytes: peakOf(pid) } };
  } finally {
    isOver = true;
    await watching;
    await session.detach();
  }
}

async function heapOf(session: CDPSession): Promise<number> {
  return (await session.send('Runtime.getHeapUsage')).usedSize;
}

/** The process that runs the page: the renderer that has used most processor time of all. */
async function rendererOf(page: Page): Promise<number | null> {
  const session = await page.context().browser()?.newBrowserCDPSession();
  if (!session) return null;
  const { processInfo } = await session.send('SystemInfo.getProcessInfo');
  await session.detach();
  const renderers = processInfo.filter(({ type }) => type === 'renderer');
  return renderers.sort((one, other) => other.cpuTime - one.cpuTime)[0]?.id ?? null;
}

/** Makes the kernel count the peak anew (proc(5), clear_refs). */
function resetPeak(pid: number | null): void {
  try {
    writeFileSync(`/proc/${pid}/clear_refs`, '5');
  } catch {
    // Not Linux, or not allowed: the peak is then that of all of the page's life.
  }
}

function peakOf(pid: number | null): number | null {
  try {
    const status = readFileSync(`/proc/${pid}/status`, 'utf8');
    const kilobytes = /VmHWM:\s+(\d+) kB/.exec(status)?.[1];
    return kilobytes === undefined ? null : 1024 * Number(kilobytes);
  } catch {
    return null;
  }
}
