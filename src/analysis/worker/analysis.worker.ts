// The analysis thread: a shell that carries messages in and out.
import { AnalysisSession } from '../analysis-session';
import type { ToWorker } from '../protocol';

const session = new AnalysisSession((message) => self.postMessage(message));
self.onmessage = ({ data }: MessageEvent<ToWorker>) => session.handle(data);
