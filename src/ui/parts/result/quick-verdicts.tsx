// What one strike a note could say: what is surely out, what deserves three strikes, what is surely fine.
import type { PanId } from '../../../domain/records/rack-records';
import type { RoundResult } from '../../../domain/rounds/round-result';
import { displayName } from '../../../domain/tuning/note-names';
import { addressOf } from '../../frame/route';
import { panWords } from '../../words/pan-words';
import { quickGroups, resultWords } from '../../words/result-words';
import './quick-verdicts.css';

export function QuickVerdicts({
  pan,
  result,
}: {
  readonly pan: PanId;
  readonly result: RoundResult;
}) {
  const groups = quickGroups(result);
  return (
    <section class="rows">
      <h2>{resultWords.quickTitle}</h2>
      <dl class="quick">
        {groups.map(({ kind, notes }) => (
          <div key={kind} data-quick={kind}>
            <dt>
              <b>{notes.length}</b> {resultWords.quick[kind]}
            </dt>
            <dd>{notes.map(({ note }) => displayName(note)).join('  ')}</dd>
          </div>
        ))}
      </dl>
      {groups.some(({ kind }) => kind === 'three-strikes') && (
        <a class="button" href={addressOf({ screen: 'begin', pan })}>
          {panWords.startRound}
        </a>
      )}
    </section>
  );
}
