// The low-C lead (tenor), C4 to E6.

import type { PanLayout } from '../layout';
import { noteNamed, sizesByPitch } from '../place-notes';
import { fourthsAndFifths } from './fourths-and-fifths';

const sizes = sizesByPitch('C4', 'E6', 0.172);

export const lowCLead: PanLayout = {
  id: 'low-c-lead',
  name: 'Lead, low C',
  // The centre: C6 C#6 D6 Eb6 E6, each near its own slot, in the order of an open model of a tenor.
  drums: [
    { name: 'lead', notes: fourthsAndFifths(noteNamed('C4'), sizes, [6.3, 11.1, 3.9, 8.7, 1.5]) },
  ],
  source:
    'Order of notes: three published drawings and pages of tenors in fourths and fifths agree. ' +
    'Sizes and radii are drawn to be legible and to leave every note 44 px for a finger on a screen ' +
    'of 320 px, not measured.',
};
