// Pans of the rack as rows that lead to them. A rack of hundreds is drawn bit by bit, so that what can be done now is
// not kept waiting for the last pan.

import { useEffect, useState } from 'preact/hooks';
import type { PanCard } from '../../../domain/rack/pan-card';
import { needNow } from '../../../domain/rack/tuner-need';
import type { NoteStanding } from '../../../domain/reading/note-standing';
import { displayName } from '../../../domain/tuning/note-names';
import type { Instant } from '../../../domain/tuning/units';
import { addressOf } from '../../frame/route';
import { familyWords } from '../../words/family-words';
import { noteRowWords } from '../../words/list-words';
import { agoWords, needWords, rackWords } from '../../words/rack-words';
import './pan-rows.css';
import { StandingMark } from '../drawing/standing-mark';

/** More than fit on a screen. */
const firstRows = 24;
/** How many times as many there are after each painting. */
const growth = 4;

export function PanRows({
  cards,
  now,
  isFirst = false,
}: {
  readonly cards: readonly PanCard[];
  readonly now: Instant;
  /** The app has only just been opened. Whoever comes back to the rack finds it as long as it was. */
  readonly isFirst?: boolean;
}) {
  const [most, setMost] = useState(isFirst ? firstRows : Number.POSITIVE_INFINITY);
  // After the painting.
  useEffect(() => {
    if (most < cards.length) setMost(growth * most);
  }, [most, cards.length]);
  return (
    <ul class="pan-list">
      {cards.slice(0, most).map((card) => (
        <li key={card.pan}>
          <PanRow card={card} now={now} />
        </li>
      ))}
    </ul>
  );
}

function PanRow({ card, now }: { readonly card: PanCard; readonly now: Instant }) {
  const { pan, name, family, layoutName, owner } = card;
  const asides = [
    layoutName === '' ? familyWords[family] : layoutName,
    owner,
    ...roundAsides(card, now),
    card.isProvisional ? rackWords.provisional : '',
    card.hasConflict ? rackWords.writtenTwice : '',
    card.worked.length > 0 ? rackWords.workedOn(noteRowWords(card.worked)) : '',
    card.stopgaps.length > 0 ? rackWords.magnetOn(noteRowWords(card.stopgaps)) : '',
  ].filter((each) => each !== '');
  return (
    <a class="pan-row" href={addressOf({ screen: 'pan', pan })} data-pan={pan}>
      <StandingMark standing={worstOf(card)} />
      <span>
        <b class="pan-name">{rackWords.nameOf(name)}</b>
        <span class="aside">{asides.join(' · ')}</span>
        <span class="need">{needLine(card, now)}</span>
      </span>
    </a>
  );
}

const roundAsides = ({ lastRoundAt, openRound }: PanCard, now: Instant): readonly string[] =>
  lastRoundAt === null
    ? [openRound === null ? rackWords.noRoundYet : rackWords.firstRound]
    : [rackWords.round(agoWords(lastRoundAt, now)), openRound === null ? '' : rackWords.openRound];

const worstFirst: readonly NoteStanding[] = ['avoid', 'out', 'playable', 'good'];

const worstOf = ({ standings }: PanCard): NoteStanding =>
  worstFirst.find((standing) => standings[standing] > 0) ?? 'unread';

function needLine(card: PanCard, now: Instant): string {
  const { lastRoundAt, worst } = card;
  const { reasons } = needNow(card, now);
  if (reasons.length > 0) return reasons.slice(0, 2).map(needWords).join('; ');
  if (lastRoundAt === null) return rackWords.notHeardYet;
  const [first] = worst;
  return first === undefined ? rackWords.allGood : rackWords.worstIs(displayName(first));
}
