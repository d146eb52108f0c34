// What the ear measured on real strikes beside what the independent analysis has there.
import type { MeasuredPartial, Strike } from '../../../src/domain/measurement/strike';
import { centsBetween, hertz } from '../../../src/domain/tuning/units';
import { finallyHeard } from '../../dsp/listen-to';
import { inSilence, toldNote } from './hear-take';
import { periodHz } from './period-detector';
import type { AnalysedPartial, RealTake } from './real-takes';

export const partials = ['fundamental', 'octave', 'third'] as const;
export type PartialName = (typeof partials)[number];

/** One partial of one strike, ours against the analysis. */
export interface Compared {
  readonly take: RealTake;
  readonly partial: PartialName;
  /** Ours above theirs, cents, and the error that we state for ours (one standard deviation). */
  readonly cents: number;
  readonly sigmaCents: number;
  /** Whether the windows of the analysis agree, so that there is one frequency to be right about. */
  readonly isSure: boolean;
  /** We reported two lines. */
  readonly isPair: boolean;
}

/** The windows of an analysis that is sure agree to this, cents. */
const sureCents = 0.5;

/** What `take` is by the analysis near `hz`, heard from `from` s on: null where it found nothing. */
function analysedAt(
  found: AnalysedPartial | null,
  hz: number,
  from: number,
): { readonly hz: number; readonly isSure: boolean } | null {
  if (!found) return null;
  const windows = Object.entries(found.hzSlope).flatMap(([name, value]) =>
    value === null ? [] : [{ from: Number(name.split('-')[0]), hz: value }],
  );
  const values = windows.map((window) => window.hz);
  const isSure =
    windows.length > 1 &&
    centsBetween(hertz(Math.min(...values)), hertz(Math.max(...values))) <= sureCents;
  if (isSure) {
    // The same window, or the one that begins nearest to it.
    const [same] = windows.toSorted((a, b) => Math.abs(a.from - from) - Math.abs(b.from - from));
    return same ? { hz: same.hz, isSure } : null;
  }
  const away = (line: { readonly hz: number }): number => Math.abs(line.hz - hz);
  const [nearest] = (found.lines ?? []).toSorted((a, b) => away(a) - away(b));
  return nearest ? { hz: nearest.hz, isSure } : null;
}

/** The partials of a settled strike that the analysis has as well. */
function compared(take: RealTake, strike: Strike): readonly Compared[] {
  const third = strike.third?.kind === 'twelfth' ? take.f3 : take.f4;
  const all: readonly (readonly [
    PartialName,
    MeasuredPartial | null,
    AnalysedPartial | null,
    unknown,
  ])[] = [
    ['fundamental', strike.fundamental, take.f1, strike.fundamentalRival],
    ['octave', strike.octave, take.f2, strike.octaveRival],
    ['third', strike.third, third, strike.thirdRival],
  ];
  return all.flatMap(([partial, ours, found, rival]) => {
    const theirs = ours && analysedAt(found, ours.hz, ours.window?.from ?? 0);
    if (!theirs) return [];
    return {
      take,
      partial,
      cents: centsBetween(hertz(theirs.hz), ours.hz),
      sigmaCents: ours.sigmaCents,
      isSure: theirs.isSure,
      isPair: Boolean(rival),
    };
  });
}

/** Every strike, told its note, against the analysis; a strike that is refused has nothing to compare. */
export const comparedTakes = (takes: readonly RealTake[]): readonly Compared[] =>
  takes.flatMap((take) => {
    const { samples, sampleRate } = inSilence(take);
    const strike = finallyHeard(samples, sampleRate, toldNote(take.midi)).find(
      (heard) => heard.kind === 'strike',
    );
    return strike?.kind === 'strike' ? compared(take, strike) : [];
  });

/** How far pitchy's fundamental is from the analysis, cents; null where either found nothing. */
export function periodCents(take: RealTake, onset: number): number | null {
  const hz = periodHz(inSilence(take), onset);
  const theirs = hz === null ? null : analysedAt(take.f1, hz, 0.1);
  return hz === null || !theirs ? null : centsBetween(hertz(theirs.hz), hertz(hz));
}
