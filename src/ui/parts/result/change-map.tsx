// The pan with what changed about each note since another round.

import type { PanLayout } from '../../../domain/pans/layout';
import type { PanId, RoundId } from '../../../domain/records/rack-records';
import type { NoteChange } from '../../../domain/rounds/round-changes';
import type { ThirdKind } from '../../../domain/tuning/third-kind';
import type { MidiNote } from '../../../domain/tuning/units';
import { addressOf } from '../../frame/route';
import { changeWords } from '../../words/change-words';
import { signWords } from '../../words/result-words';
import { PanDrawing } from '../drawing/pan-drawing';
import { changeLabel, changeNoteMark } from './change-note-mark';
import '../drawing/standing-map.css';
import { StandingMark } from '../drawing/standing-mark';

export function ChangeMap({
  pan,
  from = null,
  layout,
  changes,
  thirdOf,
}: {
  readonly pan: PanId;
  /** The round whose result this is on. */
  readonly from?: RoundId | null;
  readonly layout: PanLayout;
  readonly changes: readonly NoteChange[];
  readonly thirdOf: (note: MidiNote) => ThirdKind | null;
}) {
  const byNote = new Map(changes.map((change) => [change.note, change]));
  const notes = layout.drums.flatMap((drum) => drum.notes.map((place) => place.note));
  const marks = new Map(
    notes.map((note) => [note, changeNoteMark(byNote.get(note), thirdOf(note))] as const),
  );
  const changed = changes.filter((each) => each.hasChanged).length;
  const legend = [
    { shape: 'moved', count: changed, text: changeWords.moved(changed) },
    { shape: 'playable', count: changes.length - changed, text: changeWords.noChange },
    { shape: 'unread', count: marks.size - changes.length, text: changeWords.notBoth },
  ] as const;
  const signs = signWords([...marks.values()].map(({ text }) => text));
  return (
    <div class="standing-map">
      <PanDrawing
        layout={layout}
        label={(name, note) => changeLabel(name, byNote.get(note), thirdOf(note))}
        markOf={(note) => marks.get(note) ?? null}
        hrefOf={(note) => addressOf({ screen: 'note', pan, note, from })}
      />
      <ul class="standing-legend">
        {legend.map(
          ({ shape, count, text }) =>
            count > 0 && (
              <li key={shape}>
                <StandingMark standing={shape} />
                <span>
                  <b>{count}</b> {text}
                </span>
              </li>
            ),
        )}
      </ul>
      {signs !== '' && <p class="quiet signs">{signs}</p>}
    </div>
  );
}
