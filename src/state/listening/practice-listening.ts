// Listening to a simulated pan: each tap sounds from the speaker and goes to the ear without a microphone between.
import { notesOf } from '../../domain/pans/layout';
import type { PracticeSource, Speaker } from '../../domain/ports/sound-ports';
import type { MidiNote } from '../../domain/tuning/units';
import { type EarUse, practiceRate } from './ear-use';
import { soundBlocks } from './sound-blocks';

/** Of each strike, 0…1 (chosen, no source). */
const loudness = 0.7;

export interface PracticeListening {
  /** Resolves true once the pan can be struck, false if something else has begun to listen. */
  begin(source: PracticeSource): Promise<boolean>;
  strike(source: PracticeSource, note: MidiNote): void;
}

export function createPracticeListening(
  { ear, context, readout, taking, user, leavePan, closeMicrophone }: EarUse,
  speaker: Speaker,
): PracticeListening {
  return {
    async begin(source) {
      const isLatest = user.begin();
      leavePan();
      taking.from.value = 'practice';
      await closeMicrophone();
      if (!isLatest()) return false;
      context.practice.value = notesOf(source.layout);
      readout.expectAny();
      context.tell();
      taking.begin(practiceRate);
      ear.begin(practiceRate);
      readout.startAnew();
      return true;
    },
    strike(source, note) {
      // It is known which note is struck: an answer to "which note?" must not refuse the others.
      const expected = readout.expected.value;
      if (expected !== null && expected !== note) {
        readout.expectAny();
        context.tell();
      }
      const sound = source.strike(note, loudness, practiceRate);
      speaker.play(sound.slice(), practiceRate);
      for (const block of soundBlocks(sound)) ear.feed(block);
    },
  };
}
