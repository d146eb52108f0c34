// One tap that took something out or marked it can be taken back for ten seconds, on whatever screen one is by then.
import { type ReadonlySignal, signal } from '@preact/signals';
import type { MarkKind } from '../../domain/records/rack-records';
import type { MidiNote } from '../../domain/tuning/units';

/** What was done, for the words of the bar. */
export type Undoable =
  | { readonly kind: 'visit' | 'round' | 'pan' | 'photo' }
  | { readonly kind: 'mark'; readonly note: MidiNote; readonly mark: MarkKind };

export interface UndoOffer {
  readonly done: Undoable;
  readonly takeBack: () => void;
}

export interface UndoModel {
  /** What can be taken back now; null: nothing. */
  readonly offer: ReadonlySignal<UndoOffer | null>;
  /** Offers to take `done` back, in place of the offer before. */
  propose(done: Undoable, takeBack: () => void): void;
  /** Takes it back, and removes the offer. */
  takeBack(): void;
  /** While the bar has the focus of a keyboard it stays. */
  hold(isHeld: boolean): void;
}

/** s (chosen: as long as was asked for); whoever is slower has the list of what was taken out. */
export const undoSeconds = 10;

export function createUndoModel(pause: (seconds: number) => Promise<void>): UndoModel {
  const offer = signal<UndoOffer | null>(null);
  let isHeld = false;
  let isOver = false;
  const close = (): void => {
    offer.value = null;
    isOver = false;
    isHeld = false;
  };
  return {
    offer,
    propose(done, takeBack) {
      const made = { done, takeBack };
      close();
      offer.value = made;
      void pause(undoSeconds).then(() => {
        if (offer.value !== made) return;
        if (isHeld) isOver = true;
        else close();
      });
    },
    takeBack() {
      const made = offer.value;
      close();
      made?.takeBack();
    },
    hold(held) {
      isHeld = held;
      if (!held && isOver) close();
    },
  };
}
