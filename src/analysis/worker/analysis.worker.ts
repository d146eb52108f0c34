// The analysis thread: a shell that carries messages in and out.
import { AnalysisSession } from '../session/analysis-session';
import type { ToEarWorker } from '../session/protocol';

const session = new AnalysisSession((message) => self.postMessage(message));
self.onmessage = ({ data }: MessageEvent<ToEarWorker>) => session.handle(data);
