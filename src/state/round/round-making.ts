// What a round makes to be kept: its readings and marks, with the blows on their notes that became no strike.
import type { Heard } from '../../domain/measurement/strike';
import type { Reading } from '../../domain/reading/reading';
import {
  type Attachment,
  type MarkKind,
  type RackRecord,
  type RoundEnd,
  roundOf,
} from '../../domain/records/rack-records';
import {
  type BlowsSoFar,
  blowsWithout,
  noBlowsSoFar,
  refusedBlowsOf,
  withBlowHeard,
} from '../../domain/rounds/refused-blows';
import type { MidiNote } from '../../domain/tuning/units';
import { type HeadPorts, newHead } from '../keeping/new-head';
import { readingRecord } from '../keeping/reading-record';
import { type SoundKeeping, withSound } from '../keeping/with-sound';
import type { ListenModel } from '../listening/listen-model';
import type { OpenRound } from './open-round';
import { endRecord, markRecord } from './round-records';

export interface RoundMakingPorts extends SoundKeeping, HeadPorts {
  readonly listen: Pick<ListenModel, 'soundOf' | 'taking'>;
  readonly appVersion: string;
}

/** What a step makes that is to be kept. */
export interface Made {
  readonly record: RackRecord;
  readonly attachments: readonly Attachment[];
}

export interface RoundMaking {
  /** Counts what was heard while `asked` was asked for; null where it counts for no note. */
  hear(heard: Heard, asked: MidiNote | null): void;
  /** The microphone begins anew, and the times of what it hears with it. */
  beginListening(): void;
  /** Another round is shown. */
  forget(): void;
  reading(round: OpenRound, reading: Reading): Promise<Made>;
  mark(round: OpenRound, note: MidiNote, mark: MarkKind): Promise<Made>;
  end(round: OpenRound, ending: RoundEnd['ending']): RoundEnd;
}

export function createRoundMaking(ports: RoundMakingPorts): RoundMaking {
  let blows: BlowsSoFar = noBlowsSoFar;
  const headOf = ({ start }: OpenRound) => newHead(start.pan, ports);
  /** The refused blows that go into the record of a note that is done. */
  const takeRefused = (note: MidiNote) => {
    const refused = refusedBlowsOf(blows, note);
    blows = blowsWithout(blows, note);
    return refused;
  };
  return {
    hear(heard, asked) {
      blows = withBlowHeard(blows, heard, asked);
    },
    beginListening() {
      blows = { ...blows, last: null };
    },
    forget() {
      blows = noBlowsSoFar;
    },
    reading(round, { note, heard: strikes }) {
      const taking = { ...ports.listen.taking.value, appVersion: ports.appVersion };
      const refused = takeRefused(note);
      const taken = { round: roundOf(round.start), note, strikes, taking, refused };
      return withSound(readingRecord(taken, headOf(round)), strikes.at(-1), ports);
    },
    async mark(round, note, mark) {
      const marked = { note, mark, refused: takeRefused(note) };
      return { record: markRecord(round.start, marked, headOf(round)), attachments: [] };
    },
    end: (round, ending) => endRecord(round.start, ending, headOf(round)),
  };
}
