// A quick round, begun from the pan's page.
import type { OpenPan } from '../../../state/pan/pan-model';
import type { RoundModel } from '../../../state/round/round-model';
import { goTo } from '../../frame/route';
import { panPageWords } from '../../words/pan-words';

/** Begins at once, with nothing asked: the second tap from the rack is a round under way. */
export function QuickRound({
  round,
  pan,
}: {
  readonly round: Pick<RoundModel, 'begin'>;
  readonly pan: OpenPan;
}) {
  const begin = (): void => {
    const id = round.begin({
      pan: pan.id,
      fields: pan.current.fields,
      way: 'quick',
      conditions: { standing: null, temperature: null },
      earlier: [...pan.sinceBase, ...pan.outside],
    });
    goTo({ screen: 'round', pan: pan.id, round: id });
  };
  return (
    <button type="button" onClick={begin}>
      {panPageWords.quickRound}
    </button>
  );
}
