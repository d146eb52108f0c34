// A round that was finished by mistake can be continued: its end is erased.
import type { PanRecords, RoundEnd, RoundId } from '../records/rack-records';
import { withoutErased } from '../records/standing/without-erased';
import type { Instant } from '../tuning/units';

/** ms (own choice): later the pan is no longer the same, warmer or colder, and a new round is the honest thing. */
const aDay = 24 * 3600 * 1000;

/** The ends to be erased so that the round goes on; none where it is under way or ended more than a day before `now`. */
export function endsToGoOn(records: PanRecords, round: RoundId, now: Instant): readonly RoundEnd[] {
  const ends = withoutErased(records).ends.filter((end) => end.round === round);
  return ends.every(({ at }) => now - at <= aDay) ? ends : [];
}
