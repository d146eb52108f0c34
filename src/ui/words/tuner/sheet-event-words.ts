// What happened to a pan, as the sheet for the tuner tells it.

import type { DamageKind } from '../../../domain/knock-check/damage-evidence';
import type { ImpactPlace } from '../../../domain/records/impact-place';
import type { LookAnswer, LookKind } from '../../../domain/records/look-kinds';
import type { SheetEvent, ShownSign } from '../../../domain/sheet/sheet';
import { displayName } from '../../../domain/tuning/note-names';
import { noteRowWords, rowWords } from '../list-words';

/** Short, for a cell of the table, too. */
export const signNames: Readonly<Record<DamageKind, string>> = {
  'no-octave': 'no octave',
  'no-third': 'no third',
  choked: 'choked',
  walking: 'walking',
  buzzing: 'buzzing',
  'new-doublet': 'octave doubled',
};

const looks: Readonly<Record<LookKind, string>> = {
  'sharp-edges': 'sharp edges',
  crack: 'a crack',
  rim: 'the rim is bent',
  skirt: 'the skirt is dented or touches something',
  hangers: 'a hanger touches or is loose',
  stand: 'the stand touches or is bent',
  heat: 'the pan was hot',
  water: 'water in the bowl',
};

/** One thing that happened, after its day. */
export function eventWords(event: SheetEvent): string {
  switch (event.kind) {
    case 'knock': {
      const { impact, looks: seen, remarks } = event.check;
      const answered = (wanted: LookAnswer): readonly string[] =>
        seen.filter(({ answer }) => answer === wanted).map(({ look }) => looks[look]);
      const found = answered('yes');
      const unsure = answered('unsure');
      return [
        impact === null ? 'Knock.' : `Knock ${impactWords(impact)}.`,
        found.length === 0 ? 'Nothing was seen.' : `Seen: ${rowWords(found)}.`,
        unsure.length === 0 ? '' : `Not sure: ${rowWords(unsure)}.`,
        event.signs === null ? '' : heardWords(event.signs),
        remarks,
      ]
        .filter((part) => part !== '')
        .join(' ');
    }
    case 'visit': {
      const { who, done, remarks } = event.visit;
      return ['A tuner was here', who === '' ? '' : ` (${who})`, '. ', done, ' ', remarks]
        .join('')
        .trim();
    }
    case 'marked':
      return `Marked ${event.mark}: ${noteRowWords(event.notes)}.`;
  }
}

/** A sign on more notes than this is told by their number: the table says which they are. */
const mostNamed = 8;

/** "Signs of damage heard after it: choked A4, B♭4; no octave D4." */
const heardWords = (shown: readonly ShownSign[]): string =>
  shown.length === 0
    ? 'No sign of damage was heard after it.'
    : `Signs of damage heard after it: ${shown.map(shownSign).join('; ')}.`;

const shownSign = ({ sign, notes }: ShownSign): string =>
  `${signNames[sign]} ${notes.length > mostNamed ? `on ${notes.length} notes` : noteRowWords(notes)}`;

const impactWords = (impact: ImpactPlace): string =>
  impact.kind === 'note'
    ? `on ${displayName(impact.note)}`
    : `at ${Math.round(impact.clock) % 12 || 12} o’clock${impact.radius > 0.7 ? ' at the rim' : ''}${impact.drum > 0 ? `, drum ${impact.drum + 1}` : ''}`;
