// Moments in which nothing that is heard counts, because the phone itself makes a sound.
import type { Heard } from '../../domain/measurement/strike';
import { createLatest } from '../asking/latest';

/** Resolves after so many seconds. */
export type Pause = (seconds: number) => Promise<void>;

/**
 * The first word on a strike comes this long after it, s (chosen, no source): what the phone said is reported later
 * than it sounded.
 */
const lateness = 0.45;

export interface DeafMoments {
  isDeafTo(heard: Heard): boolean;
  /** Deaf until `sound` is over and everything that it caused has been reported. */
  during(sound: Promise<void>): Promise<void>;
  hearAgain(): void;
}

/** Remembers the events that began in a deaf moment, because their settled result comes after it. */
export function createDeafMoments(pause: Pause): DeafMoments {
  let sounds = 0;
  let ignored: number | null = null;
  const latest = createLatest();
  return {
    isDeafTo({ event }) {
      if (sounds > 0) ignored = Math.max(ignored ?? event, event);
      return ignored !== null && event <= ignored;
    },
    async during(sound) {
      const isLatest = latest.join();
      sounds++;
      await sound;
      await pause(lateness);
      if (isLatest()) sounds--;
    },
    hearAgain() {
      latest.drop();
      sounds = 0;
      ignored = null;
    },
  };
}
