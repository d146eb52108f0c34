// The advice never holds up the page: on a pan that has taught a hundred sets it is learned in a thread of its own.
import { expect, it } from 'vitest';
import { blowPlaces } from '../../src/domain/records/blow-places';
import { recordId } from '../../src/domain/records/rack-records';
import { instant, midiNote } from '../../src/domain/tuning/units';
import { readingSample } from '../domain/rounds/round-sample';
import { sampleBlows } from '../storage/rack/rack-sample';
import { openWithRecords } from './rack-seed';
import { panWith } from './seeded-pans';
import { standInEar, tellStrikes, untilListening } from './stand-in-ear';

declare global {
  interface Window {
    /** How long the page was busy: to hear a strike and ask, and to take an answer, ms. */
    busy?: { ask: number[]; answer: number[] };
    questions?: number;
  }
}

/** Runs in the page: times what it does to ask and to take an answer. */
function timeTheAdvice(): void {
  const busy = { ask: [] as number[], answer: [] as number[] };
  window.busy = busy;
  window.questions = 0;
  window.Worker = new Proxy(window.Worker, {
    construct(Real, [url, options]: [string | URL, WorkerOptions?]) {
      const worker = new Real(url, options);
      if (!/advice/.test(String(url))) return worker;
      const post = worker.postMessage.bind(worker);
      worker.postMessage = (message: unknown) => {
        window.questions = (window.questions ?? 0) + 1;
        post(message);
      };
      Object.defineProperty(worker, 'onmessage', {
        set: (take: (event: MessageEvent) => void) =>
          worker.addEventListener('message', (event) => {
            const begun = performance.now();
            take(event);
            busy.answer.push(performance.now() - begun);
          }),
      });
      return worker;
    },
  });
  const say = window.sayHeard;
  window.sayHeard = (heard) => {
    const begun = performance.now();
    say?.(heard);
    busy.ask.push(performance.now() - begun);
  };
}

const setCount = 100;
const note = 74;

const taught = Array.from({ length: setCount }, (_, k) => {
  const [before, after] = [0, 1].map((later) =>
    readingSample(null, { note, fundamental: later * (k % 5), octave: 0, third: 0 }, 2 * k + later),
  );
  if (!before || !after) throw new Error('no readings');
  const place = blowPlaces[k % blowPlaces.length] ?? 'border';
  const blows = sampleBlows(`blows-${k}`, note);
  return [
    before,
    after,
    {
      ...blows,
      id: recordId(`blows-${k}`),
      pan: before.pan,
      at: instant(before.at + 1000),
      note: midiNote(note),
      count: 2,
      logged: { place, side: 'above' as const, firmness: 'light' as const },
      before: before.id,
      after: after.id,
    },
  ];
}).flat();

it('asks and takes its answer within 16 ms on a pan that has taught a hundred sets', async () => {
  const app = await openWithRecords(
    `#/pan/pan-1/bench/${note}`,
    { records: [...panWith({ name: 'Heron' }, [{}]), ...taught] },
    { beforeApp: standInEar },
  );
  try {
    const { page } = app;
    await page.locator('details.consent summary').click();
    await page.locator('.consent-body button').click();
    await page.evaluate(timeTheAdvice);
    await page.getByRole('button', { name: 'Listen', exact: true }).click();
    await untilListening(page);
    await tellStrikes(page, 3, { note, fundamental: -12, octave: -8, third: 3 });
    await page.locator('section.advice[data-advice="blows"]').waitFor();
    const { busy, questions } = await page.evaluate(() => ({
      busy: window.busy ?? { ask: [], answer: [] },
      questions: window.questions ?? 0,
    }));
    const longest = (times: readonly number[]) => Math.max(...times);
    process.stdout.write(
      `advice on ${setCount} sets: the page was busy at most ${longest(busy.ask).toFixed(1)} ms to hear a strike and ask, ${longest(busy.answer).toFixed(1)} ms to take an answer\n`,
    );
    expect(questions).toBeGreaterThan(0);
    expect(busy.answer.length).toBeGreaterThan(0);
    // The middle ones, so that a busy machine does not fail it: learning on the page would take every time too long.
    const middle = (times: readonly number[]) =>
      [...times].sort((a, b) => a - b)[times.length >> 1];
    expect(middle(busy.ask)).toBeLessThan(16);
    expect(middle(busy.answer)).toBeLessThan(16);
    expect(app.problems).toEqual([]);
  } finally {
    await app.close();
  }
});
