// A pan as the player sees it: one drum as large as the screen, several drums in columns where every note keeps room
// for a finger, otherwise one at a time under small pictures of all of them.
import { useLayoutEffect, useState } from 'preact/hooks';
import { drumOf } from '../../../domain/pans/edit-layout';
import type { PanLayout } from '../../../domain/pans/layout';
import type { MidiNote } from '../../../domain/tuning/units';
import { layoutWords } from '../../words/layout-words';
import { DrumDrawing } from './drum-drawing';
import { DrumTabs } from './drum-tabs';
import type { MarkOf } from './note-mark';
import './pan-drawing.css';
import { columnsFor } from './pan-drawing-geometry';

export function PanDrawing({
  layout,
  label = plainLabel,
  chosen = null,
  markOf,
  onNote,
  hrefOf,
}: {
  readonly layout: PanLayout;
  /** What a note is called for those who do not see it: its state belongs into it. */
  readonly label?: (note: string, midi: MidiNote) => string;
  /** Its drum is shown. */
  readonly chosen?: MidiNote | null;
  readonly markOf?: MarkOf<MidiNote>;
  /** Without it and without `hrefOf` the pan is a picture. */
  readonly onNote?: (note: MidiNote) => void;
  /** Makes links of the notes. */
  readonly hrefOf?: (note: MidiNote) => string;
}) {
  const [shown, show] = useState(0);
  const holding = chosen === null ? -1 : drumOf(layout, chosen);
  // Also when another note of the same drum is chosen after somebody has looked at another drum.
  useLayoutEffect(() => {
    if (holding >= 0 && chosen !== null) show(holding);
  }, [holding, chosen]);
  const columns = columnsFor(layout);
  const one = layout.drums[Math.min(shown, layout.drums.length - 1)];
  const common = { columns, label, chosen, markOf, onNote, hrefOf };
  if (layout.drums.length === 1 && one) {
    return <DrumDrawing drum={one} name={layout.name} {...common} />;
  }
  const asked = chosen === null ? undefined : layout.drums[holding];
  if (asked && one && layout.drums.length >= manyDrums) {
    // The one that is asked for, named, at once: nobody looks for it among six small ones or below the fold.
    return (
      <div class="drums-in-turn asked-first">
        <p class="asked-drum">{layoutWords.drum(one.name)}</p>
        <DrumDrawing
          drum={one}
          name={`${layout.name}, ${one.name}`}
          {...common}
          columns={1}
          lettersFor={askedLetters}
        />
        <DrumTabs layout={layout} shown={shown} chosen={chosen} markOf={markOf} onShow={show} />
      </div>
    );
  }
  if (columns === 1 && one) {
    return (
      <div class="drums-in-turn">
        <DrumTabs layout={layout} shown={shown} chosen={chosen} markOf={markOf} onShow={show} />
        <DrumDrawing drum={one} name={`${layout.name}, ${one.name}`} {...common} />
      </div>
    );
  }
  return (
    <div class={`drum-grid columns-${columns}`}>
      {layout.drums.map((drum, k) => (
        <figure key={k}>
          <DrumDrawing drum={drum} name={`${layout.name}, ${drum.name}`} {...common} />
          <figcaption>{drum.name}</figcaption>
        </figure>
      ))}
    </div>
  );
}

/** The drawing of the asked drum is at least 240 px high (pan-drawing.css), for 325 units. */
const askedLetters = 1.36;

/** More do not stand beside each other on a small screen. */
const manyDrums = 3;

const plainLabel = (note: string): string => note;
