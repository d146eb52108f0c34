// How near the ear is to the independent analysis, and whether the errors that it states are true.
import { quantile } from '../../ear-scenes/statistics';
import { type Compared, comparedTakes, partials, periodCents } from './analysed-partials';
import type { RealTake } from './real-takes';
import { groupsOf, percent, print } from './strike-table';

/** Asked of a partial, cents (measuring.md); and of stated errors: this share lies within two of them. */
const nearCents = 1.5;
const wantedShare = 0.95;
const statedErrors = 2;

const isNear = ({ cents }: { readonly cents: number }): boolean => Math.abs(cents) <= nearCents;
/** How many stated errors a value is off. */
const errorsOff = ({ cents, sigmaCents }: Compared): number => Math.abs(cents) / sigmaCents;
const isTrue = (each: Compared): boolean => errorsOff(each) <= statedErrors;

/** "43 of 45 (95.6 %)" */
function partOf<Item>(items: readonly Item[], holds: (item: Item) => boolean): string {
  const part = items.filter(holds).length;
  return `${part} of ${items.length} (${percent(part, items.length)})`;
}

/**
 * Whether stated errors that are set on some notes hold on another: with each note left out, the factor by which 95 %
 * of the others lie within two, and how many of the note's own then do.
 */
function leftOutOf(all: readonly Compared[]): {
  readonly factors: readonly number[];
  readonly held: number;
} {
  const notes = [...groupsOf(all, ({ take }) => take.note)];
  const trials = notes.map(([note, own]) => {
    const others = all.filter(({ take }) => take.note !== note).map(errorsOff);
    const factor = quantile(others, wantedShare) / statedErrors;
    return { factor, held: own.filter((each) => errorsOff(each) <= statedErrors * factor).length };
  });
  return {
    factors: trials.map(({ factor }) => factor),
    held: trials.reduce((sum, { held }) => sum + held, 0),
  };
}

function printErrors(name: string, all: readonly Compared[]): void {
  const { factors, held } = leftOutOf(all);
  const range = `${Math.min(...factors).toFixed(2)} to ${Math.max(...factors).toFixed(2)}`;
  print(
    `${name.padEnd(44)} within two as stated ${partOf(all, isTrue).padEnd(20)} scaled by the other notes ${percent(held, all.length)}, factor ${range}`,
  );
}

export function printAccuracy(takes: readonly RealTake[], onset: number): void {
  const all = comparedTakes(takes);
  const rowOf = (name: string, of: readonly Compared[]): void => {
    const sigma =
      of.length === 0
        ? '–'
        : quantile(
            of.map((each) => each.sigmaCents),
            0.5,
          ).toFixed(2);
    const pairs = of.filter(({ isPair }) => isPair).length;
    print(
      `${name.padEnd(26)} within 1.5 cents ${partOf(of, isNear).padEnd(22)} within two errors ${partOf(of, isTrue).padEnd(22)} median error ${sigma}, two lines ${pairs}`,
    );
  };
  for (const partial of partials) {
    const of = all.filter((each) => each.partial === partial);
    rowOf(partial, of);
    rowOf(
      '  where the analysis agrees',
      of.filter(({ isSure }) => isSure),
    );
    for (const [dynamic, group] of groupsOf(of, ({ take }) => take.dynamic))
      rowOf(`  strength ${dynamic}`, group);
    if (partial === 'fundamental') {
      const period = takes.flatMap((take) => periodCents(take, onset) ?? []);
      print(
        `  pitchy                   within 1.5 cents ${partOf(period, (cents) => isNear({ cents }))}`,
      );
    }
  }
  const main = all.filter(({ partial }) => partial !== 'third');
  printErrors('fundamental and octave', main);
  printErrors(
    '… where the analysis agrees with itself',
    main.filter(({ isSure }) => isSure),
  );
  printErrors('all three', all);
  for (const each of all) {
    if (!isNear(each)) {
      const { take, partial, cents, sigmaCents } = each;
      print(`  ${take.file}: ${partial} ${cents.toFixed(1)} ± ${sigmaCents.toFixed(1)}`);
    }
  }
}
