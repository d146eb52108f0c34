// What the walks need of a browser engine, whatever drives it.
import type { Point } from './find-on-page';

export interface EngineSetup {
  /** Of a sound server and of a screen. */
  readonly environment: Readonly<Record<string, string>>;
  /** The user's folder of this browser: it outlives its process. */
  readonly profile: string;
  /** Where downloads and printed pages go. */
  readonly outbox: string;
}

export interface Engine {
  readonly name: string;
  /** Starts the browser with one empty page. Close it in the end. */
  start(setup: EngineSetup): Promise<EngineBrowser>;
}

export interface EngineBrowser extends EnginePage {
  /** As the browser says it. */
  readonly version: string;
  /** Resolves to the PDF file of what the page has asked to be printed, or null as long as there is none. */
  printed(): Promise<string | null>;
  /** Ends the browser as a user does. */
  close(): Promise<void>;
}

export interface EnginePage {
  open(address: string): Promise<void>;
  /** The value of a JavaScript expression in the page, which travels as JSON. */
  evaluate(expression: string): Promise<unknown>;
  /** A real mouse that goes there and presses once. */
  clickAt(point: Point): Promise<void>;
  /** Real keys for whatever has the focus. */
  typeKeys(text: string): Promise<void>;
  /** Chooses a file for the field that the expression gives, as its dialog would. */
  giveFile(fieldExpression: string, path: string): Promise<void>;
}
