// Every screen, and every state of the readout, at the sizes of phones, tablets and desks: how tall the capitals are, what
// reaches out of the screen, what lies behind a bar, and what axe finds. `npm run bench:screens` prints the table;
// SIZES=640x360 takes only sizes whose name fits that pattern.
import type { Page } from 'playwright-core';
import { expect, test } from 'vitest';
import type { RefusedStrike } from '../../src/domain/measurement/strike';
import { midiNote, seconds } from '../../src/domain/tuning/units';
import { axeFaults } from '../browser/axe-faults';
import { everyScreen } from '../browser/every-screen';
import { openWithRecords } from '../browser/rack-seed';
import { panWith } from '../browser/seeded-pans';
import { sayHeard, standInEar, tellStrikes, untilListening } from '../browser/stand-in-ear';

/** px: what can be read from 2 m (issue "Everyday use"). */
const leastCapitals = 96;

const sizes: Readonly<Record<string, readonly [width: number, height: number]>> = {
  '320x640': [320, 640],
  '360x640': [360, 640],
  '640x360': [640, 360],
  '740x360': [740, 360],
  '800x1280': [800, 1280],
  '1280x800': [1280, 800],
  'text at 200 %': [360, 640],
  'forced colours': [360, 640],
};
const wanted = new RegExp(process.env['SIZES'] ?? '');

interface Faults {
  readonly out: readonly string[];
  readonly behind: readonly string[];
  readonly capitals: number | null;
}

/** In the page: what is wrong with what is shown now. */
function measure(): Faults {
  const named = (element: Element) =>
    `${element.tagName.toLowerCase()} "${element.textContent.trim().slice(0, 30)}"`;
  const boxes = [...document.querySelectorAll('main :is(h1, h2, p, li, a, button, label, td, th)')]
    .filter((element) => element.checkVisibility() && !element.closest('.only-spoken, .fit, svg'))
    .map((element) => ({ element, box: element.getBoundingClientRect() }))
    .filter(({ box }) => box.width > 1 && box.height > 1);
  /** A table that scrolls by itself, beside its screen, may be wider than that. */
  const isScrolled = (element: Element): boolean => {
    for (
      let each = element.parentElement;
      each && each.tagName !== 'MAIN';
      each = each.parentElement
    ) {
      if (/auto|scroll/.test(getComputedStyle(each).overflowX)) return true;
    }
    return false;
  };
  const out = boxes
    .filter(
      ({ element, box }) => !isScrolled(element) && (box.left < -1 || box.right > innerWidth + 1),
    )
    .map(({ element }) => named(element));
  if (document.documentElement.scrollWidth > innerWidth) out.push('the page');
  // The word and number must be seen before anything is scrolled.
  const bar = document.querySelector('main .actions')?.getBoundingClientRect();
  const covered = [...document.querySelectorAll('#readout :is(.huge, .digits)')].filter((line) => {
    const box = line.getBoundingClientRect();
    const across = bar && box.right > bar.left && box.left < bar.right;
    const down = bar && box.bottom > bar.top + 1 && box.top < bar.bottom;
    return (across && down) || box.bottom > innerHeight + 1;
  });
  const lines = [...document.querySelectorAll('#readout :is(.huge, .digits)')];
  const heights = lines.map((line) => 0.7 * Number.parseFloat(getComputedStyle(line).fontSize));
  return {
    out: out.slice(0, 3),
    behind: covered.map(named),
    capitals: heights.length > 0 ? Math.min(...heights) : null,
  };
}

const refused = (reason: RefusedStrike['reason'], event: number): RefusedStrike => ({
  kind: 'refused',
  event,
  at: seconds(event),
  reason,
  note: midiNote(76),
  candidates: reason === 'which-note' ? [midiNote(64), midiNote(76)] : [],
});

type State = readonly [name: string, reach: (page: Page) => Promise<unknown>];

/** States of the readout, one after the other on the listening screen. */
const states: readonly State[] = [
  ['strike any note', async () => undefined],
  ['flat 9', (page) => tellStrikes(page, 3)],
  ...(['too-soft', 'too-loud', 'too-fast', 'unclear', 'wrong-note', 'which-note'] as const).map(
    (reason, k): State => [reason, (page) => sayHeard(page, [refused(reason, 1000 + k)])],
  ),
  ['octave flat 12', (page) => tellStrikes(page, 3, { fundamental: 0, octave: -12, note: 76 })],
];

for (const [name, [width, height]] of Object.entries(sizes)) {
  if (!wanted.test(name)) continue;
  test(`every screen at ${name}`, async () => {
    const records = panWith({ name: 'Heron' }, [
      {},
      { day: 30, off: { 62: { fundamental: -20 } } },
    ]);
    const app = await openWithRecords(
      '#/',
      { records },
      { beforeApp: standInEar, bypassPolicy: true, viewport: { width, height } },
    );
    const faults: string[] = [];
    const rows: string[] = [];
    const note = async (screen: string) => {
      const { out, behind, capitals } = await app.page.evaluate(measure);
      const contrast = (await axeFaults(app.page)).filter((fault) => /contrast/.test(fault));
      const low = capitals !== null && capitals < leastCapitals ? [`capitals ${capitals}`] : [];
      const all = [
        ...out.map((each) => `out: ${each}`),
        ...behind.map((each) => `behind a bar: ${each}`),
        ...low,
        ...contrast,
      ];
      rows.push(
        `${name.padEnd(15)} ${screen.padEnd(34)} ${(capitals?.toFixed(0) ?? '').padStart(4)} px  ${all.join('; ') || 'clean'}`,
      );
      faults.push(...all.map((fault) => `${screen}: ${fault}`));
    };
    try {
      const { page } = app;
      if (name === 'forced colours') await page.emulateMedia({ forcedColors: 'active' });
      const restyle = () =>
        name === 'text at 200 %'
          ? page.evaluate(() => {
              document.documentElement.style.fontSize = '200%';
            })
          : Promise.resolve();
      await restyle();
      for (const address of everyScreen) {
        const at = address
          .replace('round/round-1', 'round/round-30')
          .replace('result/round-1', 'result/round-30');
        await page.evaluate((to) => {
          location.hash = to;
        }, at);
        await page.locator('main').waitFor();
        await page.waitForTimeout(250);
        await note(at);
      }
      await page.getByRole('link', { name: 'Listen', exact: true }).click();
      await untilListening(page);
      for (const [state, reach] of states) {
        await reach(page);
        await page.waitForTimeout(150);
        await note(`listening: ${state}`);
      }
    } finally {
      process.stdout.write(`${rows.join('\n')}\n`);
      await app.close();
    }
    expect(faults).toEqual([]);
  });
}
