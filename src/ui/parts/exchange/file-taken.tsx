// What a file that was taken in has brought, and what is to be settled now.

import type { BackupModel, ComingIn } from '../../../state/rack/backup-model';
import { addressOf } from '../../frame/route';
import { differingWords, exchangeWords } from '../../words/keeping/exchange-words';
import { rowWords } from '../../words/list-words';
import { fieldNames } from '../../words/pan-words';
import '../drawing/note-rows.css';

const pansNamed = 12;
const differingNamed = 20;

type Taken = Extract<ComingIn, { kind: 'taken' }>;

export function FileTaken({
  taken,
  model,
}: {
  readonly taken: Taken;
  readonly model: Pick<BackupModel, 'settle'>;
}) {
  const { added, pans, leftOut, healed, takenOut, differingCount } = taken;
  const count = added.records + added.attachments;
  const more = pans.length - pansNamed;
  const left = (
    <>
      {healed > 0 && <p>{exchangeWords.healed(healed)}</p>}
      {takenOut > 0 && <p>{exchangeWords.takenOut(takenOut)}</p>}
      {leftOut > 0 && <p>{exchangeWords.leftOut(leftOut)}</p>}
    </>
  );
  if (pans.length === 0) {
    return (
      <>
        <div class="hint">
          {differingCount === 0 && takenOut === 0 && <p>{exchangeWords.nothingNew}</p>}
          {left}
        </div>
        <Differences taken={taken} model={model} />
      </>
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
      <Differences taken={taken} model={model} />
    </>
  );
}

/** What says something else than what is here; each goes from the list once it is settled. */
function Differences({
  taken: { differing, differingCount },
  model,
}: {
  readonly taken: Taken;
  readonly model: Pick<BackupModel, 'settle'>;
}) {
  const shown = differing.slice(0, differingNamed);
  if (shown.length === 0) return null;
  const more = differingCount - shown.length;
  return (
    <section class="hint warn">
      <p>{exchangeWords.differingTaken(differingCount)}</p>
      <ul class="plain-rows">
        {shown.map(({ key, name, kind }) => (
          <li key={key}>
            <p>{differingWords(nameOf(name), kind)}</p>
            <div class="pair">
              <button type="button" onClick={() => void model.settle(key, 'yours')}>
                {exchangeWords.keepYours}
              </button>
              <button type="button" onClick={() => void model.settle(key, 'theirs')}>
                {exchangeWords.takeTheirs}
              </button>
            </div>
          </li>
        ))}
      </ul>
      {more > 0 && <p>{exchangeWords.moreDiffering(more)}</p>}
    </section>
  );
}

const nameOf = (name: string): string => (name === '' ? exchangeWords.unnamed : name);
