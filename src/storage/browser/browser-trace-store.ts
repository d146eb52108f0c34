// The trace of the rack in the browser's other, smaller store. Chromium deletes a damaged IndexedDB, and one of a
// phone that has run full, without touching this one; where it goes too, nothing can be said.
import type { TraceStore } from '../../domain/ports/trace-store';
import { type RackTrace, restoreTrace, traceText } from '../../domain/rack/rack-trace';

const key = 'ringwright-trace';

export class BrowserTraceStore implements TraceStore {
  read(): RackTrace | null {
    try {
      return restoreTrace(localStorage.getItem(key));
    } catch {
      // Storage is refused.
      return null;
    }
  }

  write(trace: RackTrace): void {
    try {
      localStorage.setItem(key, traceText(trace));
    } catch {
      // Full or refused: the rack itself says so.
    }
  }
}
