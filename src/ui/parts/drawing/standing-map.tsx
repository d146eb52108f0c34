// The pan with the state of each note, and what the shapes mean; a tap on a note leads to its page.
import type { PanLayout } from '../../../domain/pans/layout';
import type { NoteStanding } from '../../../domain/reading/note-standing';
import type { PanId, RoundId } from '../../../domain/records/rack-records';
import type { MidiNote } from '../../../domain/tuning/units';
import { addressOf } from '../../frame/route';
import { signWords } from '../../words/result-words';
import { PanDrawing } from './pan-drawing';
import './standing-map.css';
import { StandingLegend } from './standing-legend';
import { type ShownStanding, standingLabel, standingNoteMark } from './standing-note-mark';

export function StandingMap({
  pan,
  from = null,
  layout,
  notes,
  standings,
}: {
  readonly pan: PanId;
  /** The round whose result this is on. */
  readonly from?: RoundId | null;
  readonly layout: PanLayout;
  readonly notes: ReadonlyMap<MidiNote, ShownStanding>;
  readonly standings: Readonly<Record<NoteStanding, number>>;
}) {
  const marks = new Map([...notes].map(([note, shown]) => [note, standingNoteMark(shown)]));
  const signs = signWords([...marks.values()].map(({ text }) => text));
  return (
    <div class="standing-map">
      <PanDrawing
        layout={layout}
        label={(name, note) => {
          const shown = notes.get(note);
          return shown ? standingLabel(name, shown) : name;
        }}
        markOf={(note) => marks.get(note) ?? null}
        hrefOf={(note) => addressOf({ screen: 'note', pan, note, from })}
      />
      <StandingLegend standings={standings} />
      {signs !== '' && <p class="quiet signs">{signs}</p>}
    </div>
  );
}
