// The readings of a pan that belong to no round. An index leaves out what has no key, so they are in none: they are what is
// left of the pan's readings without those of its rounds, found by their names alone. (An index over pan and time would
// have to be built over all readings of the rack when the app is updated: more than 10 s for 58,000 of them.)
import { placesOfPan } from '../database/database-structure';
import type { Transaction } from '../database/transaction';

/** As they are stored, in any order. */
export async function storedOutside(
  transaction: Transaction<'readonly'>,
  pan: string,
): Promise<readonly unknown[]> {
  const readings = transaction.objectStore('readings');
  const [all, rounds] = await Promise.all([
    readings.index('place').getAllKeys(placesOfPan(pan)),
    transaction.objectStore('rounds').index('pan').getAllKeys(pan),
  ]);
  const ofRounds = await Promise.all(
    rounds.map((round) => readings.index('round').getAllKeys(round)),
  );
  const inRounds = new Set(ofRounds.flat());
  const left = await Promise.all(
    all.filter((id) => !inRounds.has(id)).map((id) => readings.get(id)),
  );
  // Those of a round that is not here are left, too.
  return left.filter((stored) => (stored as { readonly round?: unknown }).round === null);
}
