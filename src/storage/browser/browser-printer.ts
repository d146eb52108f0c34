// The browser's own way to paper and to a PDF file.
import type { Printer } from '../../domain/ports/phone-ports';

export class BrowserPrinter implements Printer {
  print(): void {
    window.print();
  }
}
