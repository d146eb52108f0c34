// What a screen shows of something that is read from the rack first.
import type { StoreTrouble } from '../../domain/ports/pan-store';

/** Not read yet, not there, or unreadable; the words say why. */
export type NotOpen =
  | { readonly kind: 'loading' }
  /** There is no such thing on this phone. */
  | { readonly kind: 'missing' }
  | { readonly kind: 'trouble'; readonly trouble: StoreTrouble };

/** `Read` are the fields that are there once it has been read. */
export type OpenView<Read> = NotOpen | ({ readonly kind: 'open' } & Read);
