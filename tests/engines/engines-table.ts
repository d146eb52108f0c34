// What the walks found, as the table that README shows.
import type { Planted } from './strike-files';

/** How far (cents) two engines may differ on one and the same strike. */
export const mostApart = 0.1;
/** How far (cents) each may be off what was planted. */
export const mostOff = 0.5;

export interface StepOutcome {
  readonly step: string;
  /** Null: it went well. */
  readonly trouble: string | null;
  readonly cents?: Planted;
}

export interface EngineOutcome {
  readonly engine: string;
  readonly version: string;
  readonly steps: readonly StepOutcome[];
}

const partials = ['fundamental', 'octave', 'third'] as const;

const heardBy = ({ steps }: EngineOutcome): Planted | null =>
  steps.find(({ cents }) => cents)?.cents ?? null;

/** The greatest difference (cents) between two engines in any partial; null unless every engine has heard the strike. */
export function apart(outcomes: readonly EngineOutcome[]): number | null {
  const heard = outcomes.map(heardBy).filter((cents) => cents !== null);
  if (heard.length < outcomes.length || heard.length === 0) return null;
  return Math.max(
    ...partials.map((partial) => {
      const values = heard.map((cents) => cents[partial]);
      return Math.max(...values) - Math.min(...values);
    }),
  );
}

/** The greatest difference (cents) between what any engine heard and what was planted; null if none heard anything. */
export function off(outcomes: readonly EngineOutcome[], truth: Planted): number | null {
  const heard = outcomes.map(heardBy).filter((cents) => cents !== null);
  if (heard.length === 0) return null;
  return Math.max(
    ...heard.flatMap((cents) =>
      partials.map((partial) => Math.abs(cents[partial] - truth[partial])),
    ),
  );
}

/** A sentence for everything that is not as it must be; none if all is well. NaN never passes. */
export function faultsOf(outcomes: readonly EngineOutcome[], truth: Planted): readonly string[] {
  const failed = outcomes.flatMap(({ engine, steps }) =>
    steps.flatMap(({ step, trouble }) =>
      trouble === null ? [] : [`${engine}, ${step}: ${trouble}`],
    ),
  );
  const difference = apart(outcomes);
  const error = off(outcomes, truth);
  return [
    ...failed,
    ...(difference !== null && difference <= mostApart
      ? []
      : [`How far the engines are apart: ${words(difference)}, at most ${mostApart}.`]),
    ...(error !== null && error <= mostOff
      ? []
      : [`How far off what was planted: ${words(error)}, at most ${mostOff}.`]),
  ];
}

const words = (cents: number | null): string =>
  cents === null ? 'not measured' : `${cents.toFixed(2)} cents`;

/** The table in Markdown. Engines are the columns. */
export function engineRows(outcomes: readonly EngineOutcome[]): string {
  const steps = outcomes[0]?.steps ?? [];
  const rows = steps.map(({ step }, k) => [
    step,
    ...outcomes.map((outcome) => cell(outcome.steps[k])),
  ]);
  const heard = partials.map((partial) => [
    `${partial === 'third' ? 'double octave' : partial} heard, cents`,
    ...outcomes.map((outcome) => heardBy(outcome)?.[partial].toFixed(2).replace('-', '−') ?? '–'),
  ]);
  return tableOf([
    ['', ...outcomes.map(({ engine, version }) => `${engine} ${version}`)],
    ...rows,
    ...heard,
  ]);
}

const cell = (outcome: StepOutcome | undefined): string =>
  outcome === undefined ? '–' : outcome.trouble === null ? 'ok' : '**failed**';

function tableOf(rows: readonly (readonly string[])[]): string {
  const widths = (rows[0] ?? []).map((_, column) =>
    Math.max(3, ...rows.map((row) => row[column]?.length ?? 0)),
  );
  const line = (row: readonly string[]) =>
    `| ${row.map((text, column) => text.padEnd(widths[column] ?? 0)).join(' | ')} |`;
  const [head = [], ...body] = rows;
  return [line(head), line(widths.map((width) => '-'.repeat(width))), ...body.map(line)].join('\n');
}

export interface Circumstances {
  readonly day: string;
  readonly system: string;
  readonly truth: Planted;
}

/** The table and the sentence under it. */
export function engineReport(
  outcomes: readonly EngineOutcome[],
  { day, system, truth }: Circumstances,
): string {
  const planted = partials.map((partial) => String(truth[partial]).replace('-', '−')).join(', ');
  return [
    engineRows(outcomes),
    '',
    `${day}, ${system}. Planted: ${planted} cents. How far the engines are apart: ${words(apart(outcomes))} (at most ${mostApart}). How far off what was planted: ${words(off(outcomes, truth))} (at most ${mostOff}).`,
  ].join('\n');
}

const begin = '<!-- npm run engines -- --readme: from here -->';
const end = '<!-- to here -->';

/** `readme` with `report` between its two marks; throws if it has none. */
export function withReport(readme: string, report: string): string {
  const from = readme.indexOf(begin);
  const to = readme.indexOf(end);
  if (from < 0 || to < from) throw new Error(`README has no place for the table: ${begin} ${end}`);
  return `${readme.slice(0, from + begin.length)}\n\n${report}\n\n${readme.slice(to)}`;
}
