// A magnet for tonight: where it may help, and that it is on until somebody says that it is off.

import type { TonightNote } from '../../../domain/knock-check/tonight-notes';
import type { PanId, StopgapKind } from '../../../domain/records/rack-records';
import { displayName } from '../../../domain/tuning/note-names';
import type { MidiNote } from '../../../domain/tuning/units';
import { tonightWords } from '../../words/fall/tonight-words';
import { noteListWords } from '../../words/list-words';

export function MagnetField({
  pan,
  notes,
  magnets,
  onLog,
}: {
  readonly pan: PanId;
  readonly notes: readonly TonightNote[];
  /** Notes that have one now. */
  readonly magnets: readonly MidiNote[];
  readonly onLog: (pan: PanId, note: MidiNote, stopgap: StopgapKind) => void;
}) {
  const helped = notes
    .filter(({ magnet, isNeeded }) => magnet === 'helps' && isNeeded)
    .map(({ note }) => note);
  if (helped.length + magnets.length === 0) return null;
  return (
    <section class="field magnets" aria-labelledby="magnets">
      <h2 id="magnets">{tonightWords.magnetTitle}</h2>
      {magnets.length > 0 && (
        <p class="hint warn">{tonightWords.magnetReminder(noteListWords(magnets))}</p>
      )}
      {magnets.map((note) => (
        <button key={note} type="button" onClick={() => onLog(pan, note, 'none')}>
          {tonightWords.magnetTake(displayName(note))}
        </button>
      ))}
      {helped.length > 0 && (
        <>
          <p>
            {tonightWords.magnetHint(noteListWords(helped), helped.length)} {tonightWords.magnetOff}
          </p>
          <div class="pair">
            {helped.map((note) => (
              <button key={note} type="button" onClick={() => onLog(pan, note, 'magnet')}>
                {tonightWords.magnetPut(displayName(note))}
              </button>
            ))}
          </div>
        </>
      )}
    </section>
  );
}
