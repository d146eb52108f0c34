// Files out of the app: the share sheet where downloads lead nowhere, a download elsewhere.
import type { FileHandout, FileOnHand, HandedOut } from '../domain/ports/file-handout';

/** Milliseconds until a downloaded file may be let go of; some browsers read it long after the click. */
const downloadTime = 60_000;

export class BrowserFileHandout implements FileHandout {
  textFile(name: string, type: string, text: string): FileOnHand {
    return new File([text], name, { type });
  }

  async handOut(file: FileOnHand): Promise<HandedOut> {
    if (!(file instanceof File)) return 'failed';
    if (!isShared(file)) return download(file);
    try {
      await navigator.share({ files: [file] });
      return 'shared';
    } catch (error) {
      const name = error instanceof DOMException ? error.name : '';
      if (name === 'AbortError') return 'dismissed';
      return name === 'NotAllowedError' ? 'again' : 'failed';
    }
  }
}

/**
 * Apps on the home screen of an iPhone have no downloads: a download opens a preview without a way back. On other
 * phones the share sheet is the way to other people; on a computer a download is what one expects.
 */
function isShared(file: File): boolean {
  const isPhone = 'standalone' in navigator && navigator.standalone === true;
  if (!isPhone && !matchMedia('(pointer: coarse)').matches) return false;
  // Firefox on Android shares no files, Chrome on Android only some types.
  return navigator.canShare?.({ files: [file] }) ?? false;
}

function download(file: File): HandedOut {
  const address = URL.createObjectURL(file);
  const anchor = document.createElement('a');
  anchor.href = address;
  anchor.download = file.name;
  anchor.click();
  setTimeout(() => URL.revokeObjectURL(address), downloadTime);
  return 'downloaded';
}
