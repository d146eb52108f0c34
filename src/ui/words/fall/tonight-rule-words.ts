// What each rule of tonight is about, in the form that changes it.
import type { TonightRule } from '../../../domain/knock-check/tonight-rules';

/** What a rule is about. */
export const ruleWords: Readonly<Record<TonightRule, string>> = {
  crack: 'A crack was seen',
  'sharp-edges': 'Something sharp was seen',
  rim: 'The rim is bent',
  skirt: 'The skirt is dented or touches something',
  hangers: 'Something is loose or hangs wrong',
  stand: 'The stand is bent or shaky',
  heat: 'The pan is warm',
  water: 'The bowl is wet',
  'heat-minutes': 'A warm pan waits so many minutes',
  walking: 'A note changes with every strike',
  dead: 'A note is marked as dead',
  choked: 'A note stops ringing too soon',
  buzzing: 'A note buzzes',
  'no-octave': 'A note has lost its octave',
  'no-third': 'A note has lost its third partial',
  'new-doublet': 'The octave of a note has become two tones',
  'off-in-passing': 'A note more than so many cents away from the whole pan gets short notes only',
  'off-avoid': 'A note more than so many cents away from the whole pan is left out',
  'octave-in-passing': 'A note whose octave is more than so many cents off gets short notes only',
  'magnet-from': 'A magnet is named from so many cents sharp',
  'pan-heard': 'The band hears it when the whole pan is so many cents off',
  'pan-swap': 'Another pan is better when the whole pan is more than so many cents off',
  'most-left-out': 'So many percent of the notes may be left out',
  'note-lost': 'A note is gone high and low',
};
