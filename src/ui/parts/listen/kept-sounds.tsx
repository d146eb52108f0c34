// The kept sounds of a note, oldest first: before and after, one tap each.
import { useState } from 'preact/hooks';
import type { ReadingRecord } from '../../../domain/records/rack-records';
import type { SoundPlayer } from '../../../state/listening/sound-player';
import { goTo } from '../../frame/route';
import { momentWords } from '../../words/day-words';
import { soundWords } from '../../words/measuring/sound-words';

export function KeptSounds({
  readings,
  player,
}: {
  readonly readings: readonly ReadingRecord[];
  readonly player: SoundPlayer;
}) {
  const [trouble, setTrouble] = useState<'missing' | 'unheard' | null>(null);
  const kept = readings.flatMap(({ sound, at }) => (sound === null ? [] : [{ sound, at }]));
  if (kept.length === 0) return null;
  return (
    <section class="form">
      <h2>{soundWords.title}</h2>
      <div class="pair">
        {kept.flatMap(({ sound, at }) => [
          <button
            key={sound}
            type="button"
            onClick={() => {
              void player.play(sound).then((end) => setTrouble(end === 'missing' ? end : null));
            }}
          >
            {soundWords.play(momentWords(at))}
          </button>,
          <button
            key={`inside ${sound}`}
            type="button"
            onClick={() => {
              void player.hear(sound).then((end) => {
                if (end === 'heard') goTo('inside');
                else setTrouble(end);
              });
            }}
          >
            {soundWords.lookInside(momentWords(at))}
          </button>,
        ])}
      </div>
      {trouble !== null && (
        <p class="hint warn" role="alert">
          {soundWords[trouble]}
        </p>
      )}
    </section>
  );
}
