// How a note or a pan stands, as a small shape: its word always stands beside it.
import type { NoteStanding } from '../../../domain/reading/note-standing';
import './standing-mark.css';

/** What a small shape can say besides how a note stands: that it moved since another round. */
export type MarkedStanding = NoteStanding | 'moved';

/** Filled: good, or moved. Outline: playable. Half filled: out. Crossed: avoid. Dotted: not heard. */
export function StandingMark({ standing }: { readonly standing: MarkedStanding }) {
  return (
    <svg class={`standing-mark ${standing}`} viewBox="-12 -12 24 24" aria-hidden="true">
      <ellipse rx="10" ry="7.5" class="standing-oval" />
      {standing === 'out' && <path d="M-10 0a10 7.5 0 0 0 20 0z" class="standing-half" />}
      {standing === 'avoid' && <path d="M-9 -9 9 9M9 -9-9 9" class="standing-cross" />}
    </svg>
  );
}
