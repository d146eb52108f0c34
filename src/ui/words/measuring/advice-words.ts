// What the bench says about what to do next: always with the reason, the risk, and what it may disturb.

import type { Advice, LeaveReason, SuggestedBlows } from '../../../domain/advice/advice';
import type { ProfessionalReason } from '../../../domain/advice/beyond-limits';
import type { BlowAim } from '../../../domain/advice/choose-place';
import { displayName } from '../../../domain/tuning/note-names';
import { centsWords, counted } from '../count-words';
import { noteListWords } from '../list-words';
import { tenths } from '../words';

export const adviceWords = {
  title: 'What to try next',
  trial: 'Light blows, to find out',
  moves: 'What moves what',
  plan: 'The whole plan',
  leave: 'Leave it',
  notYet: 'Not yet',
  professional: 'This one is for a professional',
  undo: 'A professional can undo less than you think. Stop while it is better than before.',
  expect: 'They are expected to move',
  risk: 'Risk',
  disturbs: 'It may disturb',
  asSuggested: 'As suggested',
  consentTitle: 'Suggestions',
  consentWhy:
    'The app can suggest where to hammer next. It does so only for people who have been shown how by a tuner.',
  consent: 'I have been shown how by a tuner',
  consentOff: 'You can switch suggestions off in the settings.',
  needsPan: 'Suggestions need a pan on the rack: its neighbours and its cracks must be known.',
  settingsTitle: 'Hammering',
  trained: 'I have been shown how to hammer by a tuner',
  suggests: 'Suggest on the bench where to hammer next',
  settingsWhy:
    'Without training, do not hammer a pan. Those who have been shown how by a tuner can ask for suggestions on the bench.',
  limitsTitle: 'When a note is for a professional',
  farthest: 'Further off than, in cents',
  farthestBad: 'Enter a whole number from 5 to 200. The limit stays as it was.',
  withoutOctave: 'No octave where its neighbours have one',
  falling: 'It falls further with every strike',
  choked: 'It dies away much sooner than its neighbours',
} as const;

/** How likely a partial ends too far on the other side, and the most it may get worse. */
export function riskWords({ overshoot, worsening }: SuggestedBlows): string {
  const chance =
    overshoot < 0.02
      ? 'It will hardly go too far.'
      : `About ${counted(Math.max(1, Math.round(overshoot * 20)), 'time')} in 20 it goes too far.`;
  return worsening > 0.5
    ? `${chance} At the worst a partial ends ${centsWords(Math.ceil(worsening))} further off.`
    : chance;
}

export const disturbsWords = ({ disturbs }: Pick<SuggestedBlows, 'disturbs'>): string => {
  const of = (kind: 'neighbour' | 'ring-partner') =>
    disturbs.filter((each) => each.kind === kind).map(({ note }) => note);
  const [neighbours, partners] = [of('neighbour'), of('ring-partner')];
  return [
    neighbours.length > 0 ? `neighbours ${noteListWords(neighbours)}` : '',
    partners.length > 0 ? `${noteListWords(partners)}, which ring along` : '',
  ]
    .filter((each) => each !== '')
    .join('; ');
};

/** Why a note is left alone. */
export function leaveWords(why: LeaveReason): string {
  switch (why.kind) {
    case 'dead':
      return 'It is marked as dead. Blows do not bring it back.';
    case 'not-settled':
      return 'Strike again: three must agree.';
    case 'walking':
      return 'Its pitch moves from strike to strike. Do not hammer a note that does not hold still.';
    case 'octave-open':
      return 'There are two lines at the octave. Cover the partner and strike again.';
    case 'aligned':
      return 'All partials are within your limits. One or two cents is good enough.';
    case 'high-note':
      return `A high note ${tenths(why.cents)} cents off is good enough.`;
    case 'no-help':
      return `The last ${why.sets} sets did not make it better. Stop here and let it rest.`;
    case 'nothing-helps':
      return 'No place that belongs to this fault is expected to help. Leave the note, or give it to a professional.';
    case 'too-unsure':
      return 'What blows would do to it is too unsure. Leave the note, or give it to a professional.';
  }
}

/** Why a note is for a professional. */
export function professionalWords(why: ProfessionalReason): string {
  switch (why.kind) {
    case 'cracked':
      return `${displayName(why.note)} is marked as cracked. A cracked pan is not played and not hammered.`;
    case 'far-off':
      return `It is ${centsWords(why.cents)} off. That is more than field work mends.`;
    case 'no-octave':
      return 'Its octave is not heard, and its neighbours have one.';
    case 'choked':
      return 'It dies away much sooner than its neighbours.';
    case 'falling':
      return `It falls ${tenths(why.centsPerStrike)} cents with every strike. It may be cracked.`;
  }
}

const adviceTitles: Readonly<Record<BlowAim, string>> = {
  mend: adviceWords.title,
  try: adviceWords.trial,
};

/** Nothing speaks against the note: more must be heard first. */
const isMissingAStrike = ({ kind }: LeaveReason): boolean =>
  kind === 'not-settled' || kind === 'octave-open';

/** The same in a few words, for a voice. */
export function adviceTitle(advice: Advice): string {
  switch (advice.kind) {
    case 'blows':
      return adviceTitles[advice.aim];
    case 'leave':
      return isMissingAStrike(advice.why) ? adviceWords.notYet : adviceWords.leave;
    case 'professional':
      return adviceWords.professional;
  }
}
