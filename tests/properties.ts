// fast-check for these tests. The inputs it invents are the same in every run, so that whoever sees a failure sees it
// again. TIMES=10 npm run unit looks further: ten times as many inputs, and other ones in each run (with SEED=n those
// of the failure that named n). A property that names a seed of its own keeps it.
import {
  assert as assertProperty,
  type IAsyncProperty,
  type IProperty,
  type IRawProperty,
  type Parameters,
} from 'fast-check';

export * from 'fast-check';

const usualRuns = 100;
const usualSeed = 1996;

const times = Number(process.env['TIMES'] ?? 1);
const seed = Number(process.env['SEED'] ?? (times > 1 ? Date.now() % 2 ** 31 : usualSeed));

const runs = <Input>(parameters: Parameters<Input> = {}): Parameters<Input> => ({
  seed,
  ...parameters,
  numRuns: (parameters.numRuns ?? usualRuns) * times,
});

export function assert<Input>(
  property: IAsyncProperty<Input>,
  parameters?: Parameters<Input>,
): Promise<void>;
export function assert<Input>(property: IProperty<Input>, parameters?: Parameters<Input>): void;
export function assert<Input>(
  property: IAsyncProperty<Input> | IProperty<Input>,
  parameters?: Parameters<Input>,
): void | Promise<void> {
  const either: IRawProperty<Input> = property;
  return assertProperty(either, runs(parameters));
}
