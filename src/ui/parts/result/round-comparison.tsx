// What changed since another round: chosen from the earlier ones, on the map, and as a list.

import { type RoundId, type RoundStart, roundOf } from '../../../domain/records/rack-records';
import { type NoteChange, roundChanges } from '../../../domain/rounds/round-changes';
import type { RoundResult } from '../../../domain/rounds/round-result';
import { tunerBaseline } from '../../../domain/rounds/tuner-baseline';
import { displayName } from '../../../domain/tuning/note-names';
import type { ThirdKind } from '../../../domain/tuning/third-kind';
import type { MidiNote } from '../../../domain/tuning/units';
import type { OpenPan } from '../../../state/pan/pan-model';
import { addressOf } from '../../frame/route';
import {
  changedPartials,
  changeLine,
  changeWords,
  panShiftWords,
  signedChange,
  standingChange,
  temperatureWords,
} from '../../words/change-words';
import { momentWords } from '../../words/day-words';
import { resultWords } from '../../words/result-words';
import { sinceWords } from '../../words/since-words';
import { ChangeMap } from './change-map';
import '../drawing/note-rows.css';
import { StandingMark } from '../drawing/standing-mark';

export function RoundComparison({
  pan,
  now,
  before,
  since,
  earlier,
  onSince,
}: {
  readonly pan: OpenPan;
  readonly now: RoundResult;
  /** Null while it is being read. */
  readonly before: RoundResult | null;
  readonly since: RoundId;
  readonly earlier: readonly RoundStart[];
  readonly onSince: (round: RoundId) => void;
}) {
  const baseline = tunerBaseline(pan.records);
  const tuned = baseline.kind === 'tuning' ? baseline : null;
  const atVisit = earlier.find(({ id }) => id === tuned?.round?.id);
  // What changed since the tuner was here is what is asked for most: it comes first.
  const offered = [...(atVisit ? [atVisit] : []), ...earlier.filter((each) => each !== atVisit)];
  return (
    <>
      {tuned?.round && roundOf(tuned.round) === now.round && (
        <p class="quiet">{sinceWords.isFirst}</p>
      )}
      <label class="field">
        <span>{changeWords.since}</span>
        <select
          value={since}
          onChange={({ currentTarget: { value } }) => {
            const chosen = earlier.map(roundOf).find((each) => each === value);
            if (chosen) onSince(chosen);
          }}
        >
          {offered.map((start) => (
            <option key={start.id} value={start.id}>
              {tuned && start === atVisit && `${sinceWords.visit(tuned.visit.visitedAt)}: `}
              {momentWords(start.at)}, {resultWords.ways[start.way]}
            </option>
          ))}
        </select>
      </label>
      {before ? (
        <Changes pan={pan} now={now} before={before} />
      ) : (
        <p class="hint" role="status">
          {changeWords.reading}
        </p>
      )}
    </>
  );
}

function Changes({
  pan,
  now,
  before,
}: {
  readonly pan: OpenPan;
  readonly now: RoundResult;
  readonly before: RoundResult;
}) {
  const changes = roundChanges(before, now);
  const thirds = new Map(
    now.notes.map(({ note, reading }) => [note, reading?.third?.kind ?? null]),
  );
  const thirdOf = (note: MidiNote): ThirdKind | null => thirds.get(note) ?? null;
  const changed = changes.notes.filter(({ hasChanged }) => hasChanged);
  const still = changes.notes.length - changed.length;
  return (
    <>
      <ChangeMap
        pan={pan.id}
        from={now.round}
        layout={pan.current.fields.layout}
        changes={changes.notes}
        thirdOf={thirdOf}
      />
      <section class="rows" aria-label={changeWords.title}>
        <p class="pan-pitch">
          {panShiftWords(changes)} {temperatureWords(changes)}
        </p>
        {changes.isProvisional && <p class="hint warn">{changeWords.provisional}</p>}
        {changed.length === 0 && <p>{changeWords.noneChanged}</p>}
        <ul class="note-rows">
          {changed.map((change) => (
            <li key={change.note}>
              <ChangeRow pan={pan} from={now.round} change={change} third={thirdOf(change.note)} />
            </li>
          ))}
        </ul>
        {still > 0 && <p class="quiet">{changeWords.quiet(still)}</p>}
      </section>
    </>
  );
}

function ChangeRow({
  pan,
  from,
  change,
  third,
}: {
  readonly pan: OpenPan;
  readonly from: RoundId;
  readonly change: NoteChange;
  readonly third: ThirdKind | null;
}) {
  const parts = changedPartials(change, third);
  const [first] = parts;
  const { note, standings } = change;
  return (
    <a
      class="note-row"
      href={addressOf({ screen: 'note', pan: pan.id, note, from })}
      data-note={note}
    >
      <StandingMark standing={standings.now} />
      <span class="row-text">
        <span class="row-head">
          <b>{displayName(note)}</b> <span>{first?.name}</span>
          {first && (
            <b class={`row-number ${first.cents < 0 ? 'low' : 'high'}`}>
              {signedChange(first.cents)}
            </b>
          )}
        </span>
        <span class="aside">
          {[changeLine(parts.slice(1)), standingChange(change)]
            .filter((text) => text !== '')
            .join('; ')}
        </span>
      </span>
    </a>
  );
}
