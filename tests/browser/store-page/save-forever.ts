// Saves without a pause, to be killed in the middle of it, and looks afterwards for what is there.
import type { Loaded, PanStore } from '../../../src/domain/ports/pan-store';
import { attachmentId, type PanId, panId, roundOf } from '../../../src/domain/records/rack-records';
import * as samples from '../../storage/rack/rack-sample';

declare global {
  interface Window {
    /** Tells the test that this number is on disk; made by the test. */
    acknowledge?: (saved: number) => void;
  }
}

const soundBytes = 2000;
const panOf = (cycle: number): PanId => panId(`killed-${cycle}`);
const roundOfCycle = (cycle: number) => samples.sampleRound(`round-${cycle}`, panOf(cycle));

/** Keeps one reading with its mark and sound after the other, over four stores, and acknowledges each. Never ends. */
export async function saveForever(store: PanStore, cycle: number): Promise<never> {
  const round = roundOfCycle(cycle);
  await store.keep([samples.sampleEdit(`edit-${cycle}`, `Pan ${cycle}`, round.pan), round]);
  for (let n = 1; ; n += 1) {
    const name = `${cycle}-${n}`;
    const kept = await store.keep(
      [
        samples.sampleReading(`reading-${name}`, round, 60 + (n % 29), n),
        { ...samples.sampleMark(`mark-${name}`), pan: round.pan },
      ],
      [samples.sampleAttachment(`sound-${name}`, 'sound', soundBytes, round.pan)],
    );
    if (kept.kind === 'kept') window.acknowledge?.(n);
  }
}

export interface Found {
  /** Acknowledged savings that are not there. */
  readonly lost: number;
  /** Savings of which a part is there. */
  readonly torn: number;
  readonly whole: number;
}

/** What is there of the savings of `cycle`, of which the first `acknowledged` must be. */
export async function checkSaved(
  store: PanStore,
  cycle: number,
  acknowledged: number,
): Promise<Found> {
  const round = roundOfCycle(cycle);
  const readings = idsOf(await store.readingsOfRound(roundOf(round)));
  const pan = loaded(await store.pan(round.pan));
  const marks = new Set(pan.marks.map(({ id }) => String(id)));
  const hasRow = loaded(await store.cards()).stale.includes(round.pan);
  let lost = 0;
  let torn = 0;
  let whole = 0;
  const last = Math.max(acknowledged, readings.size, marks.size) + 2;
  for (let n = 1; n <= last; n += 1) {
    const sound = loaded(await store.attachment(attachmentId(`sound-${cycle}-${n}`)));
    const parts = [
      readings.has(`reading-${cycle}-${n}`),
      marks.has(`mark-${cycle}-${n}`),
      sound?.bytes.length === soundBytes,
    ];
    const isWhole = hasRow && parts.every((part) => part);
    if (isWhole) whole += 1;
    else if (parts.some((part) => part)) torn += 1;
    if (!isWhole && n <= acknowledged) lost += 1;
  }
  return { lost, torn, whole };
}

const idsOf = (entries: Loaded<readonly { readonly id: string }[]>): ReadonlySet<string> =>
  new Set(loaded(entries).map(({ id }) => id));

function loaded<T>(answer: Loaded<T>): T {
  if (answer.kind === 'trouble') throw new Error(`The store says ${answer.trouble}.`);
  return answer.value;
}
