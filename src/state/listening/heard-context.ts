// What the ear is told about the sound: the pan that is heard, what is known of it, and the note that is awaited.
import { type ReadonlySignal, type Signal, signal } from '@preact/signals';
import type { KnownNote } from '../../domain/measurement/strike';
import type { Ear } from '../../domain/ports/ear-port';
import type { Hertz, MidiNote } from '../../domain/tuning/units';

/** The pan that is listened to: only its notes are heard, and what is known of them helps the ear. */
export interface HeardPan {
  readonly notes: readonly MidiNote[];
  readonly known: readonly KnownNote[];
  /** A4 it is judged against. */
  readonly a4: Hertz;
  /** Who it is heard for: a round that was left must not take the strikes of the bench. By default a round. */
  readonly whose?: 'round' | 'bench' | 'knock-check';
  /** It is looked over after a knock: a choked note counts as one (see `ListeningContext`). */
  readonly mayBeChoked?: boolean;
}

export interface HeardContext {
  /** The pan of the rack that is heard, or null. */
  readonly pan: Signal<HeardPan | null>;
  /** The notes of the simulated pan that is heard, or null. */
  readonly practice: Signal<readonly MidiNote[] | null>;
  /** Tells the ear: call it once everything that has changed is in place. */
  tell(): void;
  /** More is known of the pan that is heard: the ear is told. */
  know(known: readonly KnownNote[]): void;
}

/** `a4`: the band's pitch, for what has none of its own; `expected`: the note that is awaited, null for any. */
export function createHeardContext(
  ear: Pick<Ear, 'setContext'>,
  a4: ReadonlySignal<Hertz>,
  expected: () => MidiNote | null,
): HeardContext {
  const pan = signal<HeardPan | null>(null);
  const practice = signal<readonly MidiNote[] | null>(null);
  const tell = (): void => {
    const heard = pan.value;
    ear.setContext({
      a4: heard?.a4 ?? a4.value,
      expected: expected(),
      notes: heard?.notes ?? practice.value,
      ...(heard ? { known: heard.known } : {}),
      ...(heard?.mayBeChoked ? { mayBeChoked: true } : {}),
    });
  };
  return {
    pan,
    practice,
    tell,
    know(known) {
      if (!pan.value) return;
      pan.value = { ...pan.value, known };
      tell();
    },
  };
}
