// The families of pans a rack may hold.

export const panFamilies = [
  'lead',
  'double-tenor',
  'double-second',
  'guitar',
  'cello',
  'quads',
  'tenor-bass',
  'bass',
  'other',
] as const;

export type PanFamily = (typeof panFamilies)[number];
