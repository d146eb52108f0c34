// Why a pan needs the tuner, in order of weight.
import type { Cents, Instant, MidiNote } from '../tuning/units';

export type NeedReason =
  | { readonly kind: 'cracked'; readonly notes: readonly MidiNote[] }
  | { readonly kind: 'dead'; readonly notes: readonly MidiNote[] }
  | { readonly kind: 'avoid'; readonly notes: readonly MidiNote[] }
  | { readonly kind: 'out'; readonly notes: readonly MidiNote[] }
  | { readonly kind: 'buzzing'; readonly notes: readonly MidiNote[] }
  /** The whole pan lies this far from the band's pitch. */
  | { readonly kind: 'pan-pitch'; readonly cents: Cents }
  /** Notes moved this much since the round before (mean of absolute values). */
  | { readonly kind: 'drift'; readonly cents: Cents }
  | { readonly kind: 'old-round'; readonly lastRoundAt: Instant }
  | { readonly kind: 'never-read' };
