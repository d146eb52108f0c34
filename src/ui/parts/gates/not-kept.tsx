// What could not be saved, why, and the button that tries again. Nothing is shown while all is kept.
import type { RecordKeeper } from '../../../state/keeping/record-keeper';
import { rackWords, storeTroubleWords } from '../../words/rack-words';

export function NotKept({ keeper }: { readonly keeper: Pick<RecordKeeper, 'saving' | 'retry'> }) {
  const saving = keeper.saving.value;
  if (saving.kind !== 'not-kept') return null;
  return (
    <div class="hint warn" role="alert">
      <p>
        <b>{rackWords.notSaved}</b> {storeTroubleWords[saving.trouble]}
      </p>
      <button type="button" onClick={() => void keeper.retry()}>
        {rackWords.tryAgain}
      </button>
    </div>
  );
}
