// A file that was checked: what is in it, what is here already, and what is wrong with it.
import type { PanId } from '../../../domain/records/rack-records';
import type { CheckedArrival } from '../../../state/rack/backup-model';
import {
  contentsWords,
  erasedWords,
  exchangeWords,
  faultWords,
  panInFileWords,
  takeInWords,
} from '../../words/keeping/exchange-words';
import { firstWords } from '../../words/list-words';

/** How many of the pans, and of the lines that are left out, are named. */
const named = { pans: 12, lines: 8 };

export function FileFound({ checked: { backup, here } }: { readonly checked: CheckedArrival }) {
  const { contents, isWhole } = backup;
  const shown = contents.slice(0, named.pans);
  const more = contents.length - shown.length;
  return (
    <>
      <p class="hint">
        <b>{takeInWords(contents, ({ pan }) => here?.has(pan) ?? false).what}</b>{' '}
        {isWhole && exchangeWords.isWhole} {exchangeWords.safe}
      </p>
      <Effects checked={{ backup, here }} />
      {!isWhole && <Faults checked={{ backup, here }} />}
      <h2>{exchangeWords.inFile}</h2>
      <ul class="cautions">
        {contentsWords(contents).map((line) => (
          <li key={line}>{line}</li>
        ))}
      </ul>
      {contents.length > 1 && (
        <ul class="cautions">
          {shown.map((pan) => (
            <li key={pan.pan}>
              <b>{pan.name === '' ? exchangeWords.unnamed : pan.name}</b>{' '}
              <span class="quiet">
                {panInFileWords(pan, here === null ? null : here.has(pan.pan))}
              </span>
            </li>
          ))}
          {more > 0 && <li>{exchangeWords.morePans(more)}</li>}
        </ul>
      )}
    </>
  );
}

/** What it would do to what is here; nothing for most files. */
function Effects({ checked: { backup } }: { readonly checked: CheckedArrival }) {
  const { contents, effects } = backup;
  const { differingCount, erased, hidden, edited, takenOut } = effects;
  const namesOf = (pans: readonly PanId[]): string => {
    const names = pans.map((pan) => contents.find((each) => each.pan === pan)?.name);
    return firstWords(
      names.map((name) => name || exchangeWords.unnamed),
      named.pans,
    );
  };
  const lines = [
    ...(differingCount > 0 ? [exchangeWords.differingFound(differingCount)] : []),
    ...(erased.length > 0 ? [erasedWords(erased)] : []),
    ...(edited.length > 0 ? [exchangeWords.edits(namesOf(edited))] : []),
    ...(hidden.length > 0 ? [exchangeWords.hides(namesOf(hidden))] : []),
    ...(takenOut > 0 ? [exchangeWords.takenOut(takenOut)] : []),
  ];
  if (lines.length === 0) return null;
  return (
    <ul class="hint warn cautions">
      {lines.map((line) => (
        <li key={line}>{line}</li>
      ))}
    </ul>
  );
}

function Faults({ checked: { backup } }: { readonly checked: CheckedArrival }) {
  const { faults, leftOut, leftOutCount, repairedCount } = backup.report;
  const lines = leftOut.slice(0, named.lines);
  const more = leftOutCount - lines.length;
  return (
    <div class="hint warn">
      <p>{exchangeWords.inPart}</p>
      <ul class="cautions">
        {faults.map((fault) => (
          <li key={fault}>{faultWords[fault]}</li>
        ))}
        {lines.map(({ line }) => (
          <li key={line}>{exchangeWords.lineLeftOut(line)}</li>
        ))}
        {more > 0 && <li>{exchangeWords.moreLeftOut(more)}</li>}
        {repairedCount > 0 && <li>{exchangeWords.repaired(repairedCount)}</li>}
      </ul>
    </div>
  );
}
