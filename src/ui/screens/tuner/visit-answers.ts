// What was typed about a tuner's visit, as it is kept.
import { isVisitDay } from '../../../domain/records/visit-days';
import type { Instant } from '../../../domain/tuning/units';
import type { TunerAnswers } from '../../../state/pan/pan-model';
import { typedMoment } from '../../frame/typed-moment';
import type { tunedWords } from '../../words/tuner/tuned-words';

export type VisitField = keyof typeof tunedWords.fields;
export type VisitDraft = Readonly<Record<VisitField, string>>;

/** The answers, or the first field that cannot be understood. */
export function visitAnswers(
  draft: VisitDraft,
  startsBaseline: boolean,
  now: Instant,
): TunerAnswers | VisitField {
  const visitedAt = typedMoment(draft.visitedAt);
  if (visitedAt === null || !isVisitDay(visitedAt, now)) return 'visitedAt';
  const nextVisit = typedMoment(draft.nextVisit);
  const isBadDay = nextVisit === null ? draft.nextVisit.trim() !== '' : nextVisit < visitedAt;
  if (isBadDay) return 'nextVisit';
  const { who, done, remarks } = draft;
  return {
    visitedAt,
    who: who.trim(),
    done: done.trim(),
    remarks: remarks.trim(),
    nextVisit,
    startsBaseline,
  };
}
