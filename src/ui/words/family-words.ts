// The kinds of pans, as they stand in the middle of a sentence.
import type { PanFamily } from '../../domain/pans/pan-family';

export const familyWords: Readonly<Record<PanFamily, string>> = {
  lead: 'lead (tenor)',
  'double-tenor': 'double tenor',
  'double-second': 'double second',
  guitar: 'guitar',
  cello: 'cello',
  quads: 'quads',
  'tenor-bass': 'tenor bass',
  bass: 'bass',
  other: 'another pan',
};

/** As it stands alone: "Double second". */
export const familyTitle = (family: PanFamily): string =>
  familyWords[family].replace(/^./, (letter) => letter.toUpperCase());
