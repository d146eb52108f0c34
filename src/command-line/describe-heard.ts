// What was heard, as the plain objects that `analyse` prints.
import type {
  Heard,
  HeardWindow,
  MeasuredPartial,
  RefusalReason,
  Strike,
  UpperPartial,
} from '../domain/measurement/strike';
import { noteName } from '../domain/tuning/note-names';
import type { ThirdKind } from '../domain/tuning/third-kind';
import type { MidiNote } from '../domain/tuning/units';

interface DescribedPartial {
  readonly hz: number;
  readonly cents: number;
  readonly sigmaCents: number;
  readonly decaySeconds: number;
  readonly levelDb: number;
  /** Where in the sound it was heard, s after the onset. */
  readonly window: HeardWindow | null;
}

/** The other one of two lines at a partial. */
interface WithBeat {
  readonly beatHz: number;
}

interface DescribedUpper extends DescribedPartial {
  readonly centsFromOwn: number;
}

/** One sounding event; frequencies Hz, intervals cents, times s, levels dB relative to full scale. */
export interface DescribedStrike {
  readonly at: number;
  readonly kind: 'strike' | 'knock' | 'refused';
  readonly reason: RefusalReason | null;
  readonly note: string | null;
  readonly fundamental: DescribedPartial | null;
  readonly fundamentalRival: (DescribedPartial & WithBeat) | null;
  readonly octave: DescribedUpper | null;
  readonly octaveRival: (DescribedUpper & WithBeat & { readonly note: string | null }) | null;
  readonly third: (DescribedUpper & { readonly kind: ThirdKind }) | null;
  readonly thirdRival: (DescribedUpper & WithBeat) | null;
  readonly glideCents: number | null;
  readonly alsoRinging: readonly {
    readonly hz: number;
    readonly levelDb: number;
    readonly note: string | null;
    readonly partial: 1 | 2 | 3 | 4 | null;
  }[];
}

/** The last word on each sounding event, in order: what is settled or refused replaces what was provisional. */
export function describeHeard(heard: readonly Heard[]): readonly DescribedStrike[] {
  const lastWords = new Map<number, Heard>();
  for (const one of heard) lastWords.set(one.event, one);
  return [...lastWords.values()]
    .filter((one) => one.kind !== 'strike' || !one.provisional)
    .sort((first, second) => first.at - second.at)
    .map(describe);
}

function describe(heard: Heard): DescribedStrike {
  switch (heard.kind) {
    case 'strike':
      return describeStrike(heard);
    case 'knock':
      return withoutPartials('knock', heard.at, null, null);
    case 'refused':
      return withoutPartials('refused', heard.at, heard.reason, heard.note);
    default:
      return heard satisfies never;
  }
}

const describeStrike = (strike: Strike): DescribedStrike => ({
  at: strike.at,
  kind: 'strike',
  reason: null,
  note: noteName(strike.note),
  fundamental: describePartial(strike.fundamental),
  fundamentalRival: strike.fundamentalRival
    ? { ...describePartial(strike.fundamentalRival), beatHz: strike.fundamentalRival.beatHz }
    : null,
  octave: strike.octave && describeUpper(strike.octave),
  octaveRival: strike.octaveRival && {
    ...describeUpper(strike.octaveRival),
    beatHz: strike.octaveRival.beatHz,
    note: nameOrNull(strike.octaveRival.note),
  },
  third: strike.third && { kind: strike.third.kind, ...describeUpper(strike.third) },
  thirdRival: strike.thirdRival
    ? { ...describeUpper(strike.thirdRival), beatHz: strike.thirdRival.beatHz }
    : null,
  glideCents: strike.glideCents,
  alsoRinging: strike.alsoRinging.map(({ hz, levelDb, note, partial }) => ({
    hz,
    levelDb,
    note: nameOrNull(note),
    partial,
  })),
});

const withoutPartials = (
  kind: 'knock' | 'refused',
  at: number,
  reason: RefusalReason | null,
  note: MidiNote | null,
): DescribedStrike => ({
  at,
  kind,
  reason,
  note: nameOrNull(note),
  fundamental: null,
  fundamentalRival: null,
  octave: null,
  octaveRival: null,
  third: null,
  thirdRival: null,
  glideCents: null,
  alsoRinging: [],
});

const nameOrNull = (note: MidiNote | null): string | null =>
  note === null ? null : noteName(note);

const describePartial = (partial: MeasuredPartial): DescribedPartial => ({
  hz: partial.hz,
  cents: partial.cents,
  sigmaCents: partial.sigmaCents,
  decaySeconds: partial.decaySeconds,
  levelDb: partial.levelDb,
  window: partial.window ?? null,
});

const describeUpper = (partial: UpperPartial): DescribedUpper => ({
  ...describePartial(partial),
  centsFromOwn: partial.centsFromOwn,
});
