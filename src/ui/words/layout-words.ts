// What the drawing, the choice and the editor of a layout say.

import type { LayoutFault } from '../../domain/pans/check-layout';
import type { EditRefusal } from '../../domain/pans/edit-result';
import type { ThirdWish } from '../../domain/pans/layout';
import { displayName } from '../../domain/tuning/note-names';
import { counted, pluralOf } from './count-words';

export const layoutWords = {
  drums: 'Drums',
  drum: (name: string) => `Drum: ${name}`,
  family: 'Kind of pan',
  layout: 'Layout',
  mirror: 'Mirror image',
  mirrorHint: 'Some bands and left-handed players use the opposite.',
  pleaseCheck: 'Please check against your pan',
  source: 'Where this comes from',
  noteCount: (notes: number, drums: number) =>
    `${counted(notes, 'note')} on ${pluralOf(drums, 'one drum', `${drums} drums`)}`,
  range: (lowest: string, highest: string) => `${lowest} to ${highest}`,
  take: 'Take this layout',
  arrange: 'Take it and drag its notes',
  title: 'Layout',
  tapNote: 'Tap a note to choose it. Then drag it, or change it below.',
  dragNote: 'Drag it where it belongs.',
  noteLabel: (note: string, isChosen: boolean) =>
    isChosen ? `${note}, chosen. Arrow keys move it.` : `Choose ${note}`,
  undo: 'Undo',
  redo: 'Redo',
  cancel: 'Cancel',
  save: 'Save',
  note: 'Note',
  onThePan: (note: string) => `${note} (on this pan)`,
  third: 'Third partial',
  thirds: {
    twelfth: 'twelfth',
    'double-octave': 'double octave',
    none: 'none: not judged',
  } satisfies Record<ThirdWish, string>,
  findOut: 'find out',
  offset: 'Offset in cents',
  offsetHint: 'How far from the even scale this note is meant to be. 0 is usual.',
  offsetLess: 'One cent lower',
  offsetMore: 'One cent higher',
  standsOn: 'On drum',
  remove: (note: string) => `Remove ${note}`,
  close: 'Done with this note',
  add: (note: string) => `Add ${note}`,
  turnLeft: 'Turn left',
  turnRight: 'Turn right',
  mirrorDrum: 'Mirror this drum',
  mirrorPan: 'Mirror the whole pan',
  changePlaces: 'This drum changes places with',
  choose: 'choose a drum',
  addDrum: 'Add a drum',
  removeDrum: 'Remove this drum',
  loseChanges: 'Your changes are not saved.',
  lose: 'Throw them away',
  goOn: 'Go on changing',
  wholePan: 'The whole pan',
  thisDrum: (name: string) => `Drum ${name}`,
  onlyDrum: 'The drum',
  checked: 'I have checked it against the pan',
  faults: 'To look at',
  moreFaults: (count: number) => `and ${count} more`,
} as const;

export function layoutFaultWords(fault: LayoutFault): string {
  const note = displayName(fault.note);
  switch (fault.kind) {
    case 'missing':
      return `${note} is missing.`;
    case 'doubled':
      return `${note} is there twice.`;
    case 'over-rim':
      return `${note} reaches over the rim.`;
    case 'overlap':
      return `${note} and ${displayName(fault.other)} overlap.`;
  }
}

/** Why a change was not made, about a note where one is known. */
export function editRefusalWords(why: EditRefusal, note: string | null): string {
  switch (why) {
    case 'doubled':
      return `${note ?? 'This note'} is on this pan already. Nothing was changed.`;
    case 'unknown':
      return 'That note or drum is not on this pan. Nothing was changed.';
    case 'not-empty':
      return 'This drum still has notes. Move or remove them first.';
  }
}
