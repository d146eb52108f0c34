// What the settings say.
import type { Reference } from '../../../domain/tuning/reference';
import type { ToleranceStep } from '../../../domain/tuning/tolerances';

export const settingsWords = {
  a4Label: 'Band pitch, A4 in Hz',
  a4Bad: 'Enter a number from 400 to 480. The band pitch stays as it was.',
  a4Set: 'Set',
  a4Now: (a4: string) => `Now A = ${a4} Hz. 440 is the usual pitch.`,
  themeLabel: 'Light or dark',
  themes: { system: 'Like the phone', light: 'Light', dark: 'Dark' },
  soundTitle: 'Sound of the strikes',
  keepSound: 'Keep a second of sound with each reading',
  soundKept: (size: string) =>
    `A second of sound takes about 100 kB. ${size} of sound are kept on this phone now.`,
  reference: 'Judge notes against',
  references: {
    band: 'the band’s pitch',
    pan: 'the pan as a whole, where its pitch is known',
  } satisfies Record<Reference, string>,
  limits: 'How far off a note may be',
  limitsWhy:
    'Cents, both ways. No published standard exists for these limits: they are what players use. A note further off than “out” is to be avoided.',
  steps: { good: 'good', playable: 'playable', out: 'out' } satisfies Record<ToleranceStep, string>,
  limitOf: (step: string, third: boolean) =>
    third ? `${step}, third partial` : `${step}, fundamental and octave`,
  own: 'Set other limits',
  usual: 'Usual limits',
  fine: 'Fine limits: good is within 2 cents',
  set: 'Set the limits',
  bad: 'Enter whole numbers from 1 to 100, none smaller than the one before it. The limits stay as they were.',
} as const;
