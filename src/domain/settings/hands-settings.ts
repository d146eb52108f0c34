// What the settings hold for busy hands: the keys that keep and move on, and whether the verdict is spoken.

export const handActions = ['keep', 'next'] as const;
/** What a key can do without the screen being touched. */
export type HandAction = (typeof handActions)[number];

export const headsetButtons = ['play', 'forward', 'back'] as const;
export type HeadsetButton = (typeof headsetButtons)[number];

/** A key of a keyboard, a phone or a remote by its `code` (or its name, where it has none), or a button of a headset. */
export type HandKey =
  | { readonly kind: 'key'; readonly code: string }
  | { readonly kind: 'headset'; readonly button: HeadsetButton };

export type HandKeys = Readonly<Record<HandAction, HandKey | null>>;

export const settledSigns = ['nothing', 'buzz', 'tone'] as const;
/** How the phone tells, besides on the screen, that a note is settled. */
export type SettledSign = (typeof settledSigns)[number];

export interface HandsSettings {
  readonly handKeys: HandKeys;
  /** A voice says the verdict when a reading has settled on the bench. */
  readonly speaksVerdict: boolean;
  readonly settledSign: SettledSign;
}

export const usualHandsSettings: HandsSettings = {
  handKeys: { keep: null, next: null },
  speaksVerdict: false,
  settledSign: 'nothing',
};
