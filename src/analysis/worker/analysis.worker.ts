// The analysis thread: a shell that carries messages in and out.
import { AnalysisSession } from '../session/analysis-session';
import type { ToWorker } from '../session/protocol';

const session = new AnalysisSession((message) => self.postMessage(message));
self.onmessage = ({ data }: MessageEvent<ToWorker>) => session.handle(data);
