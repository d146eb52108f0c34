// Said on the rack when less is there than once was, until it is back or the user goes on without it.
import type { RackModel } from '../../../state/rack/rack-model';
import { addressOf } from '../../frame/route';
import { lostWords } from '../../words/keeping/lost-words';

export function RackLost({ rack }: { readonly rack: Pick<RackModel, 'lost' | 'goOnWithout'> }) {
  const lost = rack.lost.value;
  if (lost === null) return null;
  return (
    <section class="hint warn" role="alert">
      <p>
        <b>{lostWords.title}</b> {lostWords.was(lost)}
      </p>
      <div class="pair">
        <a class="button" href={addressOf('receive')}>
          {lostWords.takeIn}
        </a>
        <button type="button" onClick={rack.goOnWithout}>
          {lostWords.goOn}
        </button>
      </div>
    </section>
  );
}
