// Files out of the app: the share sheet where downloads lead nowhere, a download elsewhere.
import type { FileForm, FileHandout, FileOnHand, HandedOut } from '../../domain/ports/file-handout';

/** Milliseconds after which a downloaded file may be released (chosen); some browsers read it long after the click. */
const downloadTime = 60_000;

export class BrowserFileHandout implements FileHandout {
  /** The share sheet would not have it: the next tap downloads it. */
  #notShared: File | null = null;

  /**
   * Chrome on Android passes on files of a list of types only, and plain text is on it, JSON and gzip are not
   * (Chromium, share_service_impl.cc); `canShare` says yes to all of them. Safari passes on any type.
   */
  bestForm(): FileForm {
    return isPhone() && 'canShare' in navigator && !isApple() ? 'text' : 'packed';
  }

  textFile(name: string, type: string, text: string): FileOnHand {
    return new File([text], name, { type });
  }

  dataFile(name: string, type: string, bytes: Uint8Array<ArrayBuffer>): FileOnHand {
    return new File([bytes], name, { type });
  }

  async copy(text: string): Promise<boolean> {
    try {
      await navigator.clipboard.writeText(text);
      return true;
    } catch {
      // Not allowed, or no such thing: the button says so.
      return false;
    }
  }

  async handOut(file: FileOnHand, text = ''): Promise<HandedOut> {
    if (!(file instanceof File)) return 'failed';
    if (!isShared(file) || this.#notShared === file) return download(file);
    try {
      await navigator.share(text === '' ? { files: [file] } : { files: [file], text });
      return 'shared';
    } catch (error) {
      const name = error instanceof DOMException ? error.name : '';
      if (name === 'AbortError') return 'dismissed';
      // Either the tap was forgotten or the type is not allowed; both have this name.
      if (name === 'NotAllowedError' && !isApple()) this.#notShared = file;
      return name === 'NotAllowedError' ? 'again' : 'failed';
    }
  }
}

/**
 * Apps on the home screen of an iPhone have no downloads: a download opens a preview without a way back. On other
 * phones the share sheet is the way to other people; on a computer a download is what one expects.
 */
function isShared(file: File): boolean {
  // Firefox on Android shares no files.
  return isPhone() && (navigator.canShare?.({ files: [file] }) ?? false);
}

/** Only Safari has this field. */
const isApple = (): boolean => 'standalone' in navigator;

const isPhone = (): boolean =>
  ('standalone' in navigator && navigator.standalone === true) ||
  matchMedia('(pointer: coarse)').matches;

function download(file: File): HandedOut {
  const address = URL.createObjectURL(file);
  const anchor = document.createElement('a');
  anchor.href = address;
  anchor.download = file.name;
  anchor.click();
  setTimeout(() => URL.revokeObjectURL(address), downloadTime);
  return 'downloaded';
}
