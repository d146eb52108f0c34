// One drum whose notes are chosen by a tap and moved by a drag or with the arrow keys.
import { useLayoutEffect, useRef } from 'preact/hooks';
import type { Drum, NotePlace } from '../../../domain/pans/layout';
import { spotAt } from '../../../domain/pans/note-outline';
import { displayName } from '../../../domain/tuning/note-names';
import type { MidiNote } from '../../../domain/tuning/units';
import { layoutWords } from '../../words/layout-words';
import { drumViewBox } from '../drawing/drum-drawing';
import type { MarkOf } from '../drawing/note-mark';
import { NoteShape, noteClasses } from '../drawing/note-shape';
import { type DrawnPoint, drawnMiddle, rim, touchArea } from '../drawing/pan-drawing-geometry';

/** A finger that has not gone farther has tapped, CSS px. */
const tapReach = 6;
/** One press of an arrow key, as a part of the rim's radius. */
const keyStep = 0.02;

const arrows: Readonly<Record<string, readonly [right: number, near: number]>> = {
  ArrowLeft: [-keyStep, 0],
  ArrowRight: [keyStep, 0],
  ArrowUp: [0, -keyStep],
  ArrowDown: [0, keyStep],
};

interface Drag {
  readonly pointer: number;
  readonly start: DrawnPoint;
  /** From the finger to the note's middle, in drawing units. */
  readonly grip: DrawnPoint;
  hasMoved: boolean;
}

export function EditableDrum({
  drum,
  name,
  chosen,
  markOf,
  onChoose,
  onDragStart,
  onDrag,
  onNudge,
}: {
  readonly drum: Drum;
  readonly name: string;
  readonly chosen: MidiNote | null;
  readonly markOf: MarkOf<MidiNote>;
  readonly onChoose: (note: MidiNote) => void;
  readonly onDragStart: () => void;
  readonly onDrag: (spot: { readonly clock: number; readonly radius: number }) => void;
  readonly onNudge: (right: number, near: number) => void;
}) {
  const drawing = useRef<SVGSVGElement>(null);
  const drag = useRef<Drag | null>(null);
  useLayoutEffect(() => {
    const svg = drawing.current;
    // A listener of our own, because only one that is not passive may keep the page from scrolling, and
    // `touch-action` is not heeded inside a drawing.
    svg?.addEventListener('touchstart', keepStill, { passive: false });
    return () => svg?.removeEventListener('touchstart', keepStill);
  }, []);

  const begin = (event: PointerEvent, place: NotePlace): void => {
    if (event.button !== 0 || !event.isPrimary) return;
    // A finger may be about to scroll: it drags only what it has chosen before.
    if (event.pointerType === 'touch' && place.note !== chosen) return;
    const at = drawing.current && drawingPoint(drawing.current, event);
    if (!at) return;
    onChoose(place.note);
    const middle = drawnMiddle(place);
    drag.current = {
      pointer: event.pointerId,
      start: { x: event.clientX, y: event.clientY },
      grip: { x: middle.x - at.x, y: middle.y - at.y },
      hasMoved: false,
    };
    drawing.current?.setPointerCapture(event.pointerId);
  };
  const move = (event: PointerEvent): void => {
    const now = drag.current;
    if (!now || now.pointer !== event.pointerId || !drawing.current) return;
    if (!now.hasMoved) {
      const away = Math.hypot(event.clientX - now.start.x, event.clientY - now.start.y);
      if (away < tapReach) return;
      now.hasMoved = true;
      onDragStart();
    }
    const at = drawingPoint(drawing.current, event);
    if (at) onDrag(spotAt([(at.x + now.grip.x) / rim, (at.y + now.grip.y) / rim]));
  };
  const end = (event: PointerEvent): void => {
    if (drag.current?.pointer === event.pointerId) drag.current = null;
  };
  const press = (event: KeyboardEvent, note: MidiNote): void => {
    const step = arrows[event.key];
    if (step && note === chosen) onNudge(...step);
    else if (event.key === 'Enter' || event.key === ' ') onChoose(note);
    else return;
    event.preventDefault();
  };

  return (
    // biome-ignore lint/a11y/useSemanticElements: an SVG drawing cannot be a fieldset element
    <svg
      ref={drawing}
      class="pan-drawing editable"
      viewBox={drumViewBox}
      role="group"
      aria-label={name}
      onPointerMove={move}
      onPointerUp={end}
      onPointerCancel={end}
    >
      <circle r={rim} class="rim" />
      {drum.notes.map((place) => {
        const isChosen = place.note === chosen;
        const mark = isChosen ? null : markOf(place.note);
        const others = drum.notes.filter((other) => other !== place).map(drawnMiddle);
        return (
          // biome-ignore lint/a11y/useSemanticElements: an SVG shape cannot be a button element
          <g
            key={place.note}
            role="button"
            tabindex={0}
            aria-label={layoutWords.noteLabel(displayName(place.note), isChosen)}
            aria-current={isChosen ? 'true' : undefined}
            class={noteClasses(mark, isChosen)}
            onPointerDown={(event) => begin(event, place)}
            onClick={() => onChoose(place.note)}
            onKeyDown={(event) => press(event, place.note)}
          >
            <polygon
              class="touch"
              points={touchArea(drawnMiddle(place), others)
                .map((corner) => `${corner.x},${corner.y}`)
                .join(' ')}
            />
            <NoteShape place={place} mark={mark} />
          </g>
        );
      })}
    </svg>
  );
}

/** The chosen note follows the finger; on any other the page scrolls. */
function keepStill(event: TouchEvent): void {
  const { target } = event;
  const isOne = event.touches.length === 1;
  if (isOne && target instanceof Element && target.closest('.note.chosen')) event.preventDefault();
}

/** Where a finger is, in drawing units; null while the drawing is not on the screen. */
function drawingPoint(drawing: SVGSVGElement, event: PointerEvent): DrawnPoint | null {
  const toScreen = drawing.getScreenCTM();
  if (!toScreen) return null;
  const { x, y } = new DOMPoint(event.clientX, event.clientY).matrixTransform(toScreen.inverse());
  return { x, y };
}
