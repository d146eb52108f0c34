// The high-D lead (tenor), D4 to F#6.

import type { PanLayout } from '../layout';
import { noteNamed, sizesByPitch } from '../place-notes';
import { fourthsAndFifths } from './fourths-and-fifths';

const sizes = sizesByPitch('D4', 'F#6', 0.17);

export const highDLead: PanLayout = {
  id: 'high-d-lead',
  name: 'Lead, high D',
  // The centre: D6 Eb6 E6 F6 F#6.
  drums: [
    { name: 'lead', notes: fourthsAndFifths(noteNamed('D4'), sizes, [3.4, 8.6, 1.2, 6, 10.8]) },
  ],
  source:
    'Derived from the range D4 to F#6 (R. A. Sharma, Composing and Arranging for the Steel Pan) and the circle ' +
    'of the low-C lead. An openly published drawing shows the same 29 places. Sizes and radii are drawn to be ' +
    'legible, not measured.',
  doubts: ['The drawing prints C and C♯ an octave lower than this range allows. Check those two.'],
};
