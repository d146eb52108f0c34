// The kept sounds of a note, oldest first: before and after, one tap each.
import { useState } from 'preact/hooks';
import type { AttachmentId, ReadingRecord } from '../../../domain/records/rack-records';
import type { SoundPlayer } from '../../../state/listening/sound-player';
import { momentWords } from '../../words/day-words';
import { soundWords } from '../../words/measuring/sound-words';

export function KeptSounds({
  readings,
  player,
}: {
  readonly readings: readonly ReadingRecord[];
  readonly player: SoundPlayer;
}) {
  const [missing, setMissing] = useState<AttachmentId | null>(null);
  const kept = readings.flatMap(({ sound, at }) => (sound === null ? [] : [{ sound, at }]));
  if (kept.length === 0) return null;
  return (
    <section class="form">
      <h2>{soundWords.title}</h2>
      <div class="pair">
        {kept.map(({ sound, at }) => (
          <button
            key={sound}
            type="button"
            onClick={() => {
              void player.play(sound).then((end) => setMissing(end === 'missing' ? sound : null));
            }}
          >
            {soundWords.play(momentWords(at))}
          </button>
        ))}
      </div>
      {missing !== null && (
        <p class="hint warn" role="alert">
          {soundWords.missing}
        </p>
      )}
    </section>
  );
}
