// How long the published rule allows a noise level without protection; the app never measures a level.
import { type Minutes, minutes } from '../tuning/units';

/** The recommended limit over a day of work, dB(A) (NIOSH Publication 98-126, 1998). */
const limitOverADay = 85;
/** For this many dB more the time is halved (the exchange rate of the same publication). */
const halvingStep = 3;

/**
 * The longest time a day that NIOSH recommends at `levelDba` dB(A) without protection:
 * 480 / 2^((L − 85) / 3) minutes (NIOSH Publication 98-126, 1998).
 */
export const allowedMinutes = (levelDba: number): Minutes =>
  minutes(480 / 2 ** ((levelDba - limitOverADay) / halvingStep));

/** The levels of the table that is shown, dB(A). */
export const tableLevels: readonly number[] = [85, 88, 91, 94, 97, 100];
