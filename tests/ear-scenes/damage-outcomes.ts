// Which signs of damage are found in seeded pans after a knock, and which are found where nothing is wrong.
import {
  type DamageEvidence,
  type DamageKind,
  evidenceOf,
} from '../../src/domain/knock-check/damage-evidence';
import { damageSigns } from '../../src/domain/knock-check/damage-signs';
import { comparisonNotes } from '../../src/domain/knock-check/pan-damage-signs';
import { lowCLead } from '../../src/domain/pans/layouts/low-c-lead';
import { hertz } from '../../src/domain/tuning/units';
import type { Damage } from '../sounds/damaged-note';
import { type DamagedPanOptions, damagedPan } from '../sounds/damaged-pan';
import { type StruckDamagedNote, strikeDamagedPan } from './strike-damaged-pan';

/** The sign that each damage is to show. */
export const signOf: Readonly<Record<Damage, DamageKind>> = {
  choked: 'choked',
  walking: 'walking',
  buzzing: 'buzzing',
  rattling: 'buzzing',
  'new-doublet': 'new-doublet',
  'no-octave': 'no-octave',
  'no-third': 'no-third',
};

export interface DamageOutcome {
  readonly seed: number;
  readonly struck: StruckDamagedNote;
  readonly damage: Damage | null;
  readonly signs: readonly DamageKind[];
  /** Found from the strikes alone, as from records of older apps, which keep no refused blows. */
  readonly isFoundInStrikes: boolean;
  /** Signs of something that is not there. A choked note's partials may be lost as well. */
  readonly falseSigns: readonly DamageKind[];
}

/** One outcome for each note of each pan. */
export const damageOutcomes = (
  seeds: readonly number[],
  options?: DamagedPanOptions,
): readonly DamageOutcome[] =>
  seeds.flatMap((seed) => {
    const pan = damagedPan(seed, options);
    const struck = strikeDamagedPan(pan);
    return struck.map((each) => outcomeOf(seed, each, struck, pan.hasBefore));
  });

const neighbours = comparisonNotes(lowCLead);

function outcomeOf(
  seed: number,
  struck: StruckDamagedNote,
  pan: readonly StruckDamagedNote[],
  hasBefore: boolean,
): DamageOutcome {
  const { note, strikes, refused, before, truth } = struck;
  const { damage, partnerHz, third } = truth;
  const others = neighbours.get(note) ?? [];
  const evidence = evidenceOf(note, strikes, {
    neighbours: pan.filter((other) => others.includes(other.note)).map((each) => each.strikes),
    before: hasBefore && before.length > 0 ? before : null,
    partnerHz: partnerHz === null ? null : hertz(partnerHz),
    third,
  });
  const kinds = (asked: DamageEvidence): readonly DamageKind[] =>
    damageSigns(asked).map(({ kind }) => kind);
  const signs = kinds({ ...evidence, ...refused });
  const expected = damage && signOf[damage];
  const isFoundInStrikes = expected !== null && kinds(evidence).includes(expected);
  const mayFollow = (sign: DamageKind): boolean =>
    damage === 'choked' && (sign === 'no-octave' || sign === 'no-third');
  const falseSigns = signs.filter((sign) => sign !== expected && !mayFollow(sign));
  return { seed, struck, damage, signs, isFoundInStrikes, falseSigns };
}

export const isFound = ({ damage, signs }: DamageOutcome): boolean =>
  damage !== null && signs.includes(signOf[damage]);
