// Units as types: a number that carries its unit, made only by its named constructor.

declare const unit: unique symbol;
type Unit<Name extends string> = number & { readonly [unit]: Name };

export type Hertz = Unit<'Hertz'>;
export type Cents = Unit<'Cents'>;
export type Seconds = Unit<'Seconds'>;
export type Minutes = Unit<'Minutes'>;
export type Decibels = Unit<'Decibels'>;
/** MIDI note number, 60 = C4 = middle C, 69 = A4. */
export type MidiNote = Unit<'MidiNote'>;
/** A moment, milliseconds since 1970-01-01 UTC. */
export type Instant = Unit<'Instant'>;

export const hertz = (value: number): Hertz => value as Hertz;
export const cents = (value: number): Cents => value as Cents;
export const seconds = (value: number): Seconds => value as Seconds;
export const minutes = (value: number): Minutes => value as Minutes;
export const decibels = (value: number): Decibels => value as Decibels;
export const midiNote = (value: number): MidiNote => value as MidiNote;
export const instant = (value: number): Instant => value as Instant;

/** Interval from `reference` up to `frequency` in cents: 1200·log2(frequency / reference). */
export const centsBetween = (reference: number, frequency: number): Cents =>
  cents(1200 * Math.log2(frequency / reference));

/** `frequency` moved by `interval` cents. */
export const shiftedBy = (frequency: number, interval: number): Hertz =>
  hertz(frequency * 2 ** (interval / 1200));
