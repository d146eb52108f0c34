// What a file that was taken in has brought, and what is to be settled now.

import type { ComingIn } from '../../../state/rack/backup-model';
import { addressOf } from '../../frame/route';
import { exchangeWords } from '../../words/keeping/exchange-words';
import { rowWords } from '../../words/list-words';
import { fieldNames } from '../../words/pan-words';

const pansNamed = 12;

export function FileTaken({ taken }: { readonly taken: Extract<ComingIn, { kind: 'taken' }> }) {
  const { added, pans, leftOut } = taken;
  const count = added.records + added.attachments;
  const more = pans.length - pansNamed;
  const left = leftOut > 0 && <p>{exchangeWords.leftOut(leftOut)}</p>;
  if (pans.length === 0) {
    return (
      <div class="hint">
        <p>{exchangeWords.nothingNew}</p>
        {left}
      </div>
    );
  }
  return (
    <>
      <div class="hint">
        {pans.slice(0, pansNamed).map(({ pan, name, isNew }) => (
          <p key={pan}>{exchangeWords.addedTo(nameOf(name), isNew)}</p>
        ))}
        {more > 0 && <p>{exchangeWords.morePans(more)}</p>}
        <p>{exchangeWords.added(count)}</p>
        {left}
      </div>
      {pans
        .filter(({ conflicts }) => conflicts.length > 0)
        .map(({ pan, name, conflicts }) => (
          <a key={pan} class="hint warn hint-link" href={addressOf({ screen: 'details', pan })}>
            {exchangeWords.settle(nameOf(name))}{' '}
            {rowWords(conflicts.map((field) => fieldNames[field].toLowerCase()))}
          </a>
        ))}
    </>
  );
}

const nameOf = (name: string): string => (name === '' ? exchangeWords.unnamed : name);
