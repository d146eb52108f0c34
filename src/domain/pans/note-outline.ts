// The oval of a note as geometry: in parts of the rim's radius, x to the right of the player, y towards the player.
import type { NotePlace } from './layout';

export type Point = readonly [x: number, y: number];

/** Points of a drawn or compared outline (chosen, no source). */
const outlinePoints = 48;

const turnOf = (clock: number): number => (clock * Math.PI) / 6;

/** The middle of a note's oval; the drum's middle is 0, 0. */
export function middleOfNote({ clock, radius }: Pick<NotePlace, 'clock' | 'radius'>): Point {
  const angle = turnOf(clock);
  return [radius * Math.sin(angle), -radius * Math.cos(angle)];
}

/** Clock hour (0 < hour ≤ 12) and distance from the drum's middle of a point. */
export function spotAt([x, y]: Point): { readonly clock: number; readonly radius: number } {
  return { clock: hourOf((Math.atan2(x, -y) * 6) / Math.PI), radius: Math.hypot(x, y) };
}

/** An hour brought onto the clock face: more than 0, at most 12. */
export const hourOf = (clock: number): number =>
  clock > 0 && clock <= 12 ? clock : ((clock % 12) + 12) % 12 || 12;

export function outlineOf(place: NotePlace): readonly Point[] {
  const turn = turnOf(place.clock);
  const [x, y] = middleOfNote(place);
  return Array.from({ length: outlinePoints }, (_, k) => {
    const angle = (2 * Math.PI * k) / outlinePoints;
    const along = place.along * Math.cos(angle);
    const across = place.across * Math.sin(angle);
    return [
      x + along * Math.cos(turn) - across * Math.sin(turn),
      y + along * Math.sin(turn) + across * Math.cos(turn),
    ] as const;
  });
}

/** How far a point lies from the middle of an oval: 0 in the middle, 1 on its outline, more outside. */
export function depthIn(place: NotePlace, [px, py]: Point): number {
  const turn = turnOf(place.clock);
  const [x, y] = middleOfNote(place);
  const along = (px - x) * Math.cos(turn) + (py - y) * Math.sin(turn);
  const across = -(px - x) * Math.sin(turn) + (py - y) * Math.cos(turn);
  return Math.hypot(along / place.along, across / place.across);
}

export const isInside = (place: NotePlace, point: Point): boolean => depthIn(place, point) < 1;

/**
 * The largest distance from the drum's middle at which an oval lying along the rim stays within it. The outline's
 * farthest point is a maximum of along²(1 − u²) + (radius + across·u)², u = −1…1, which must not exceed 1.
 */
export function furthestRadius({ along, across }: Pick<NotePlace, 'along' | 'across'>): number {
  if (along >= 1 || across >= 1) return 0;
  const bulge = along ** 2 - across ** 2;
  const touching = 1 - across;
  if (bulge <= 0 || touching * across >= bulge) return touching;
  return Math.sqrt((1 - along ** 2) * bulge) / along;
}
