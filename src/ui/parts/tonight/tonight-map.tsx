// The pan with what each note is good for tonight.
import type { TonightNote } from '../../../domain/knock-check/tonight-notes';
import type { PanLayout } from '../../../domain/pans/layout';
import type { PanId } from '../../../domain/records/rack-records';
import { addressOf } from '../../frame/route';
import { tonightWords } from '../../words/fall/tonight-words';
import { PanDrawing } from '../drawing/pan-drawing';
import '../drawing/standing-map.css';
import { StandingMark } from '../drawing/standing-mark';
import { tonightLabel, tonightNoteMark } from './tonight-note-mark';

export function TonightMap({
  pan,
  layout,
  notes,
}: {
  readonly pan: PanId;
  readonly layout: PanLayout;
  readonly notes: readonly TonightNote[];
}) {
  const byNote = new Map(notes.map((each) => [each.note, each]));
  const count = (has: (note: TonightNote) => boolean): number => notes.filter(has).length;
  const heard = (action: TonightNote['action']): number =>
    count((note) => !note.isUnread && note.isNeeded && note.action === action);
  const legend = [
    { shape: 'avoid', count: heard('avoid'), text: tonightWords.legend.avoid },
    { shape: 'out', count: heard('in-passing'), text: tonightWords.legend['in-passing'] },
    { shape: 'good', count: heard('play'), text: tonightWords.legend.play },
    {
      shape: 'playable',
      count: count(({ isNeeded, isUnread }) => !isNeeded && !isUnread),
      text: tonightWords.notNeeded,
    },
    { shape: 'unread', count: count(({ isUnread }) => isUnread), text: tonightWords.notStruck },
  ] as const;
  return (
    <div class="standing-map">
      <PanDrawing
        layout={layout}
        label={(name, note) => tonightLabel(name, byNote.get(note))}
        markOf={(note) => {
          const found = byNote.get(note);
          return found ? tonightNoteMark(found) : null;
        }}
        hrefOf={(note) => addressOf({ screen: 'note', pan, note })}
      />
      <ul class="standing-legend">
        {legend.map(
          ({ shape, count: many, text }) =>
            many > 0 && (
              <li key={shape}>
                <StandingMark standing={shape} />
                <span>
                  <b>{many}</b> {text}
                </span>
              </li>
            ),
        )}
      </ul>
    </div>
  );
}
