// Says what comes next in a round, in the way that was chosen.
import type { Announcer } from '../../domain/ports/sound-ports';
import type { RoundWay } from '../../domain/records/rack-records';
import type { RoundNews } from '../../domain/rounds/round-progress';
import type { ListenModel } from '../listening/listen-model';
import type { SettingsModel } from '../settings/settings-model';

export interface NewsPorts {
  readonly listen: Pick<ListenModel, 'ignoreDuring'>;
  readonly settings: Pick<SettingsModel, 'announcement'>;
  readonly announcer: Announcer;
  /** What the voice says. */
  readonly newsWords: (news: RoundNews) => string;
}

/** Resolves when it has been said; while it is said nothing that is heard counts. */
export async function announceNews(
  news: RoundNews,
  way: RoundWay,
  { listen, settings, announcer, newsWords }: NewsPorts,
): Promise<void> {
  // In a quick round the next strike comes at once: a sound of our own would cover it.
  if (way === 'quick' && news.kind === 'taken') return;
  switch (settings.announcement.value) {
    case 'nothing':
      return;
    case 'beep':
      return listen.ignoreDuring(announcer.beep());
    case 'voice':
      return listen.ignoreDuring(announcer.say(newsWords(news)));
  }
}
