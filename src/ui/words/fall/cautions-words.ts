// What to take care of, all in one place.

import type { Minutes } from '../../../domain/tuning/units';
import { counted } from '../count-words';

export const cautionsWords = {
  title: 'Take care',
  more: 'All cautions on one page',
  everybody: 'Always',
  always: [
    'Hammering steel is loud: wear hearing protection.',
    'Wear eye protection whenever metal is struck, and gloves for cut skirts and flaking chrome. Two people lift a bass.',
    'No flame, torch, grinder or saw on a pan or drum. Burnt zinc and chrome are poisonous.',
    'Do not play or hammer a cracked pan.',
    'One wrong blow may be beyond repair.',
  ],
  untrained: 'Without training',
  untrainedDont: [
    'Do not hammer, push, prise, heat, drill, straighten or polish anything.',
    'Listen, write down what happened, and show the pan to somebody who knows.',
  ],
  loud: 'How loud for how long',
  loudWhy:
    'NIOSH recommends at most 85 dB(A) over 8 hours a day, and half the time for every 3 dB more.',
  loudSource: 'NIOSH Publication 98-126, 1998: minutes = 480 / 2^((level − 85) / 3).',
  level: 'Level, dB(A)',
  longest: 'At most, a day',
  noMeter:
    'A phone is not a sound level meter. This app measures pitch and never says how loud it is where you stand. When in doubt, protect your ears.',
  aid: 'The app is an aid',
  aidWhy:
    'A professional tuner decides. Rules for work, noise and schools where you live come first.',
} as const;

/** "8 hours", "1 hour", "30 minutes". */
export function durationWords(length: Minutes): string {
  const whole = Math.round(length);
  if (whole < 60) return counted(whole, 'minute');
  const hours = Math.floor(whole / 60);
  const rest = whole % 60;
  const inHours = counted(hours, 'hour');
  return rest === 0 ? inHours : `${inHours} ${counted(rest, 'minute')}`;
}
