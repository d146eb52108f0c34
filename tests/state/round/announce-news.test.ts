import { signal } from '@preact/signals';
import { describe, expect, it } from 'vitest';
import type { RoundWay } from '../../../src/domain/records/rack-records';
import type { RoundNews } from '../../../src/domain/rounds/round-progress';
import type { Announcement } from '../../../src/domain/settings/settings';
import { midiNote } from '../../../src/domain/tuning/units';
import { announceNews } from '../../../src/state/round/announce-news';

const note = midiNote(60);
const next: RoundNews = { kind: 'next', note };
const taken: RoundNews = { kind: 'taken', note };

async function saidOf(news: RoundNews, way: RoundWay, how: Announcement) {
  const said: string[] = [];
  await announceNews(news, way, {
    settings: { announcement: signal(how) },
    announcer: {
      hasVoice: () => true,
      say: async (text) => void said.push(text),
      beep: async () => void said.push('beep'),
      hush: () => undefined,
    },
    listen: {
      ignoreDuring: async (sound) => {
        await sound;
        said.push('heard again');
      },
    },
    newsWords: ({ kind }) => kind,
  });
  return said;
}

describe('what comes next in a round', () => {
  it('is said, beeped or left unsaid, and nothing is heard before that is over', async () => {
    expect(await saidOf(next, 'guided', 'voice')).toEqual(['next', 'heard again']);
    expect(await saidOf(next, 'guided', 'beep')).toEqual(['beep', 'heard again']);
    expect(await saidOf(next, 'guided', 'nothing')).toEqual([]);
  });

  it('is not said between the strikes of a quick round, only at its end', async () => {
    expect(await saidOf(taken, 'quick', 'voice')).toEqual([]);
    expect(await saidOf(taken, 'free', 'voice')).toEqual(['taken', 'heard again']);
    expect(await saidOf({ kind: 'finished' }, 'quick', 'voice')).toEqual([
      'finished',
      'heard again',
    ]);
  });
});
