// What the editor of a layout knows: the layout as it is now, the chosen note, what was undone, what is wrong.
import { batch, computed, type ReadonlySignal, signal } from '@preact/signals';
import { checkLayout, type LayoutFault } from '../../domain/pans/check-layout';
import { addDrum, mirrorDrum, removeDrum, swapDrums, turnDrum } from '../../domain/pans/edit-drums';
import { beginHistory, changed, redone, undone } from '../../domain/pans/edit-history';
import {
  addNote,
  drumOf,
  hasNote,
  moveNote,
  moveToDrum,
  noteToAdd,
  placeOfNote,
  removeNote,
  renameNote,
  setOffset,
  setThird,
  withoutDoubts,
} from '../../domain/pans/edit-layout';
import type { EditRefusal, EditResult } from '../../domain/pans/edit-result';
import type { NotePlace, PanLayout, ThirdWish } from '../../domain/pans/layout';
import { mirrored } from '../../domain/pans/mirrored';
import { middleOfNote, spotAt } from '../../domain/pans/note-outline';
import { cents, type MidiNote } from '../../domain/tuning/units';

/** A change that was not made, and the note it was about. */
export interface RefusedEdit {
  readonly why: EditRefusal;
  readonly note: MidiNote | null;
}

export interface LayoutEditorModel {
  readonly layout: ReadonlySignal<PanLayout>;
  /** The chosen note, always one of the shown drum, or null. */
  readonly chosen: ReadonlySignal<MidiNote | null>;
  readonly place: ReadonlySignal<NotePlace | null>;
  /** Position of the drum that is shown. */
  readonly drum: ReadonlySignal<number>;
  readonly faults: ReadonlySignal<readonly LayoutFault[]>;
  readonly refused: ReadonlySignal<RefusedEdit | null>;
  readonly canUndo: ReadonlySignal<boolean>;
  readonly canRedo: ReadonlySignal<boolean>;
  /** The note that would be added next. */
  readonly proposed: ReadonlySignal<MidiNote>;
  choose(note: MidiNote | null): void;
  showDrum(drum: number): void;
  /** Before the first `dragTo` of a drag: its moves are undone together, apart from those of the drag before. */
  startDrag(): void;
  /** Moves the chosen note. */
  dragTo(spot: { readonly clock: number; readonly radius: number }): void;
  /** Moves the chosen note by parts of the rim's radius: right, and towards the player. */
  nudge(right: number, near: number): void;
  rename(to: MidiNote): void;
  setThird(wish: ThirdWish | null): void;
  /** Cents, brought within ±100; anything that is not a number leaves everything as it was. */
  setOffset(offset: number): void;
  moveToDrum(drum: number): void;
  remove(): void;
  /** Adds the proposed note to the shown drum and chooses it. */
  add(): void;
  turn(hours: number): void;
  mirrorDrum(): void;
  mirrorPan(): void;
  changePlaces(other: number): void;
  addDrum(): void;
  removeDrum(): void;
  /** Somebody has compared it with the pan. */
  settleDoubts(): void;
  undo(): void;
  redo(): void;
}

/** Cents: farther off it would be another note (chosen, no source). */
const widestOffset = 100;

export function createLayoutEditorModel(initial: PanLayout): LayoutEditorModel {
  const history = signal(beginHistory(initial));
  const picked = signal<MidiNote | null>(null);
  const looked = signal(0);
  const refused = signal<RefusedEdit | null>(null);
  let drags = 0;

  const layout = computed(() => history.value.present);
  const chosen = computed(() =>
    picked.value !== null && hasNote(layout.value, picked.value) ? picked.value : null,
  );
  const drum = computed(() =>
    chosen.value === null
      ? Math.min(looked.value, layout.value.drums.length - 1)
      : drumOf(layout.value, chosen.value),
  );

  const apply = (next: PanLayout, about: string | null = null): void =>
    batch(() => {
      refused.value = null;
      history.value = changed(history.value, next, about);
    });
  /** True if the change was made. */
  const attempt = (result: EditResult, note: MidiNote | null): boolean => {
    if (result.kind === 'done') apply(result.layout);
    else refused.value = { why: result.why, note };
    return result.kind === 'done';
  };
  const onChosen = (change: (note: MidiNote) => void): void => {
    if (chosen.value !== null) change(chosen.value);
  };
  const choose = (note: MidiNote | null): void =>
    batch(() => {
      // The drum stays where it is when a note is let go.
      looked.value = drum.value;
      picked.value = note;
      refused.value = null;
    });

  return {
    layout,
    chosen,
    drum,
    refused,
    place: computed(() => (chosen.value === null ? null : placeOfNote(layout.value, chosen.value))),
    faults: computed(() => checkLayout(layout.value)),
    canUndo: computed(() => history.value.past.length > 0),
    canRedo: computed(() => history.value.future.length > 0),
    proposed: computed(() => noteToAdd(layout.value)),
    choose,
    showDrum: (shown) =>
      batch(() => {
        choose(null);
        looked.value = shown;
      }),
    startDrag: () => {
      drags++;
    },
    dragTo: (spot) =>
      onChosen((note) => apply(moveNote(layout.value, note, spot), `drag ${drags}`)),
    nudge: (right, near) =>
      onChosen((note) => {
        const place = placeOfNote(layout.value, note);
        if (!place) return;
        const [x, y] = middleOfNote(place);
        apply(moveNote(layout.value, note, spotAt([x + right, y + near])), `nudge ${note}`);
      }),
    rename: (to) =>
      onChosen((note) =>
        batch(() => {
          if (attempt(renameNote(layout.value, note, to), to)) picked.value = to;
        }),
      ),
    setThird: (wish) => onChosen((note) => apply(setThird(layout.value, note, wish))),
    setOffset: (offset) =>
      onChosen((note) => {
        if (!Number.isFinite(offset)) return;
        const within = Math.min(widestOffset, Math.max(-widestOffset, offset));
        apply(setOffset(layout.value, note, cents(within)), `offset ${note}`);
      }),
    moveToDrum: (to) => onChosen((note) => attempt(moveToDrum(layout.value, note, to), note)),
    remove: () =>
      onChosen((note) =>
        batch(() => {
          choose(null);
          apply(removeNote(layout.value, note));
        }),
      ),
    add: () =>
      batch(() => {
        const note = noteToAdd(layout.value);
        if (attempt(addNote(layout.value, drum.value, note), note)) picked.value = note;
      }),
    turn: (hours) => apply(turnDrum(layout.value, drum.value, hours), `turn ${drum.value}`),
    mirrorDrum: () => apply(mirrorDrum(layout.value, drum.value)),
    mirrorPan: () => apply(mirrored(layout.value)),
    changePlaces: (other) => apply(swapDrums(layout.value, drum.value, other)),
    addDrum: () =>
      batch(() => {
        choose(null);
        apply(addDrum(layout.value));
        looked.value = layout.value.drums.length - 1;
      }),
    removeDrum: () => attempt(removeDrum(layout.value, drum.value), null),
    settleDoubts: () => apply(withoutDoubts(layout.value)),
    undo: () =>
      batch(() => {
        refused.value = null;
        history.value = undone(history.value);
      }),
    redo: () =>
      batch(() => {
        refused.value = null;
        history.value = redone(history.value);
      }),
  };
}
