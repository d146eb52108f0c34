import type { RackTrace } from '../rack/rack-trace';

/** Keeps the trace of the rack apart from the rack. Never throws: where nothing can be kept, there is no trace. */
export interface TraceStore {
  read(): RackTrace | null;
  write(trace: RackTrace): void;
}
