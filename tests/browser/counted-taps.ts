// Counts what a person does on the way to an end: taps, and how often they must scroll before they can tap.
import type { Locator } from 'playwright-core';

export interface CountedTaps {
  tap(target: Locator): Promise<void>;
  readonly taps: number;
  readonly scrolls: number;
}

export function countTaps(): CountedTaps {
  let taps = 0;
  let scrolls = 0;
  return {
    async tap(target) {
      await target.waitFor();
      const isSeen = await target.evaluate((element) => {
        const { top, bottom } = element.getBoundingClientRect();
        const middle = (top + bottom) / 2;
        return middle > 0 && middle < window.innerHeight;
      });
      if (!isSeen) scrolls++;
      taps++;
      await target.click();
    },
    get taps() {
      return taps;
    },
    get scrolls() {
      return scrolls;
    },
  };
}
