// Files on their way out of the app and into it.
/** A file that is ready to go out or has been picked: the browser's File. */
export interface FileOnHand {
  readonly name: string;
  readonly size: number;
}

/** `dismissed`: closed by the user, who knows it. `again`: the browser wants another tap for it. */
export type HandedOut = 'shared' | 'downloaded' | 'dismissed' | 'again' | 'failed';

/** `packed`: gzip where the browser can. `text`: plain text, which more programs pass on; only if it is not too large for that. */
export type FileForm = 'packed' | 'text';

/** The way out of the app for files: the share sheet where there is one, else a download. */
export interface FileHandout {
  /** The form in which a backup gets farther from this phone. */
  bestForm(): FileForm;
  /** A file of text, ready to be handed out. `type` is its media type. */
  textFile(name: string, type: string, text: string): FileOnHand;
  /** The same of anything else. */
  dataFile(name: string, type: string, bytes: Uint8Array<ArrayBuffer>): FileOnHand;
  /** Must be called inside a tap, with a file that was made before it: the browser forgets the tap after seconds. */
  /** `text` goes with it where there is a share sheet. */
  handOut(file: FileOnHand, text?: string): Promise<HandedOut>;
  /** Puts a text where it can be pasted from; false where the browser does not allow it. */
  copy(text: string): Promise<boolean>;
}
