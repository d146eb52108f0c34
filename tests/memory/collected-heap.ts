// The heap as it is right after all garbage has been collected.
import { setFlagsFromString } from 'node:v8';
import { runInNewContext } from 'node:vm';

setFlagsFromString('--expose-gc');
const collectGarbage: () => void = runInNewContext('gc');

/** Bytes in use, arrays among them, after collecting all garbage. */
export function collectedHeap(): number {
  collectGarbage();
  collectGarbage();
  return heapNow();
}

/** Bytes in use now, garbage among them. */
export function heapNow(): number {
  const { heapUsed, arrayBuffers } = process.memoryUsage();
  return heapUsed + arrayBuffers;
}
