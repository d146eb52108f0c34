// Rows on the partials in full scenes, told the note and told nothing.

import { errorsOf, type HeardScene, type PartialError } from '../../ear-scenes/hear-scene';
import { percentOf, quantile, worst } from '../../ear-scenes/statistics';
import type { Scene } from '../../sounds/scene';
import type { Row } from './print-table';
import { boundQuantile } from './scene-bound';

const nearCents = 0.15;
const worstCents = 1;

export function sceneRows(
  guided: readonly HeardScene[],
  free: readonly HeardScene[],
): readonly Row[] {
  return [
    ...rowsFor(guided, 'told the note'),
    ...rowsFor(free, 'told nothing'),
    ...boundRows(guided.map(({ scene }) => scene)),
  ];
}

function rowsFor(hearings: readonly HeardScene[], told: string): readonly Row[] {
  const all = hearings.map(({ scene, heard }) => {
    const { note } = scene.truth;
    const isWrong = heard?.kind === 'strike' && heard.note !== note;
    return { errors: errorsOf({ scene, heard }), isWrong, isStrike: heard?.kind === 'strike' };
  });
  const wrong = all.filter(({ isWrong }) => isWrong).length;
  const refused = all.filter(({ isStrike }) => !isStrike).length;
  const elsewhere = (kind: 'strikes' | 'refusals'): number =>
    hearings.reduce((sum, each) => sum + each.elsewhere[kind], 0);
  const thirds = hearings.filter(({ scene }) => scene.truth.third !== null).length;
  const rows = (name: 'fundamental' | 'octave' | 'third', count: number): readonly Row[] => {
    const found = all.flatMap(({ errors }) => errors[name] ?? []);
    return partialRows(`${name}, ${told}`, found, count, name !== 'third');
  };
  return [
    {
      quantity: `full scenes, ${told}`,
      target: '',
      measured: `${hearings.length} scenes: ${refused} not taken as a strike, ${wrong} with another note, ${elsewhere('strikes')} strikes and ${elsewhere('refusals')} refusals or knocks besides`,
      isMet: null,
    },
    ...rows('fundamental', hearings.length),
    ...rows('octave', hearings.length),
    ...rows('third', thirds),
  ];
}

function partialRows(
  name: string,
  found: readonly PartialError[],
  count: number,
  hasTarget: boolean,
): readonly Row[] {
  const errors = found.map(({ error }) => Math.abs(error));
  // What was not measured is not within.
  const within = (100 * errors.filter((error) => error <= nearCents).length) / count;
  const stated = percentOf(found, ({ error, sigma }) => Math.abs(error) <= 2 * sigma);
  const most = worst(errors);
  return [
    {
      quantity: `  ${name}: of all within ${nearCents} cent`,
      target: hasTarget ? '>= 95 %' : '',
      measured: `${within.toFixed(1)} %; of the ${errors.length} measured p50 ${quantile(errors, 0.5).toFixed(3)}, p95 ${quantile(errors, 0.95).toFixed(3)} cent`,
      isMet: hasTarget ? within >= 95 : null,
    },
    {
      quantity: `  ${name}: worst`,
      target: hasTarget ? `<= ${worstCents} cent` : '',
      measured: `${most.toFixed(3)} cent; ${count - errors.length} not measured`,
      isMet: hasTarget ? most <= worstCents && errors.length > 0 : null,
    },
    {
      quantity: `  ${name}: within 2 stated errors`,
      target: '93 to 97 %',
      measured: `${stated.toFixed(1)} %; by chance ± ${(100 * Math.sqrt((0.95 * 0.05) / errors.length)).toFixed(1)} %`,
      isMet: stated >= 93 && stated <= 97,
      whyNot: 'stated errors are set on real strikes, which stray more than scenes',
    },
  ];
}

function boundRows(scenes: readonly Scene[]): readonly Row[] {
  return (['fundamental', 'octave'] as const).map((name) => {
    const plain = boundQuantile(scenes, ({ truth }) => truth[name], false);
    const gliding = boundQuantile(scenes, ({ truth }) => truth[name], true);
    return {
      quantity: `  for comparison: p95 at the bound, ${name}`,
      target: '',
      measured: `${plain.toFixed(3)} cent; with an unknown glide ${gliding.toFixed(3)} cent (the bound knows the envelope, has no exchange and no neighbours)`,
      isMet: null,
    };
  });
}
