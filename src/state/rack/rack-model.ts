// All pans of the rack as cards: shown at once from their copy, then from what is kept, and made anew where they are
// out of date.
import { batch, computed, type ReadonlySignal, type Signal, signal } from '@preact/signals';
import type { PanFamily } from '../../domain/pans/pan-family';
import type { CardCopy } from '../../domain/ports/card-copy';
import type {
  KeptCards,
  Loaded,
  PanStore,
  RackChange,
  StoreTrouble,
} from '../../domain/ports/pan-store';
import type { Clock } from '../../domain/ports/phone-ports';
import type { TraceStore } from '../../domain/ports/trace-store';
import { type BackupReminder, backupReminder } from '../../domain/rack/backup-reminder';
import { type CardSettings, judgingText } from '../../domain/rack/card-settings';
import { areSameCards, type Cards, cardsByPan } from '../../domain/rack/cards-by-pan';
import { clockDoubt } from '../../domain/rack/clock-doubt';
import type { PanCard } from '../../domain/rack/pan-card';
import { inRackOrder, type RackOrder, searchRack } from '../../domain/rack/rack-order';
import { isLost, type RackTrace } from '../../domain/rack/rack-trace';
import type { PanId } from '../../domain/records/rack-records';
import type { LastBackup } from '../../domain/settings/settings';
import { type Instant, instant } from '../../domain/tuning/units';
import { createLatest } from '../asking/latest';
import type { OpenView } from '../asking/open-view';

/** Open once there are cards to show, or it is known that there are none. */
export type RackState = OpenView<unknown>;

export interface RackModel {
  readonly state: ReadonlySignal<RackState>;
  /** False while nothing but the copy of the cards has been read. */
  readonly isChecked: ReadonlySignal<boolean>;
  /** Pans on the rack that the search finds, in the chosen order. */
  readonly shown: ReadonlySignal<readonly PanCard[]>;
  /** All pans on the rack, in no order. */
  readonly onRack: ReadonlySignal<readonly PanCard[]>;
  /** Pans that were taken off the rack. */
  readonly removed: ReadonlySignal<readonly PanCard[]>;
  /** How many pans are on the rack. */
  readonly count: ReadonlySignal<number>;
  readonly search: Signal<string>;
  readonly order: Signal<RackOrder>;
  /** Only pans of this kind are shown; null: all. */
  readonly section: Signal<PanFamily | null>;
  /** How much kept sound takes up. */
  readonly soundBytes: ReadonlySignal<number>;
  /** Whether a backup is due. */
  readonly reminder: ReadonlySignal<BackupReminder | null>;
  /** A time that the clock of the phone is behind, and so cannot be right; null where none is known. */
  readonly clockDoubt: ReadonlySignal<Instant | null>;
  /** What was once here, if the browser has deleted it since. */
  readonly lost: ReadonlySignal<RackTrace | null>;
  /** The user has been told that it is lost. */
  goOnWithout(): void;
  load(): Promise<void>;
}

/** What the first screen asks of the store. */
export type RackStore = Pick<PanStore, 'cards' | 'size'>;

export interface RackPorts {
  /** Loads when it is first used: the first paint does not wait for it. */
  readonly store: () => Promise<RackStore>;
  readonly changes: Pick<PanStore, 'onChange'>;
  readonly trace: TraceStore;
  readonly copy: CardCopy;
  readonly clock: Clock;
  /** The day on which this version was built. */
  readonly builtAt: Instant;
  /** Reads and judges a pan: seldom needed at once, so it comes when it is first wanted. */
  readonly makeCard: (pan: PanId) => Promise<PanCard | StoreTrouble>;
  readonly judging: ReadonlySignal<CardSettings>;
  readonly lastBackup: ReadonlySignal<LastBackup | null>;
}

export function createRackModel(ports: RackPorts): RackModel {
  const { clock, judging } = ports;
  const state = signal<RackState>({ kind: 'loading' });
  const isChecked = signal(false);
  const cards = signal<Cards>(new Map());
  const search = signal('');
  const order = signal<RackOrder>('need');
  const section = signal<PanFamily | null>(null);
  const onRack = computed(() => [...cards.value.values()].filter((card) => !card.isRemoved));
  const readings = signal(0);
  const soundBytes = signal(0);
  const changes = signal(0);
  const lost = signal<RackTrace | null>(null);
  /** All pans there are, also those that were taken off the rack. */
  let pans = 0;
  const latest = createLatest();

  const leaveTrace = (): void => {
    const now = clock.now();
    const since = ports.trace.read()?.since ?? now;
    ports.trace.write({ pans, readings: readings.value, at: now, since });
  };
  /** Compares what is there with what was; while something is missing, the trace of it stays. */
  const lookForLoss = (): void => {
    const before = ports.trace.read();
    lost.value = isLost(before, { pans, readings: readings.value }) ? before : null;
    const isEmpty = pans === 0 && readings.value === 0;
    if (lost.value === null && !isEmpty) leaveTrace();
  };

  const reminderOf = (all: readonly PanCard[], count: number): BackupReminder | null => {
    const last = ports.lastBackup.value;
    const newReadings = Math.max(0, count - (last?.readings ?? 0));
    // How much had been written at a backup of an older app is not known: then readings alone remind.
    const before = last === null ? 0 : (last.changes ?? changes.value);
    const newChanges = Math.max(0, changes.value - before);
    const rounds = all.flatMap(({ lastRoundAt }) => lastRoundAt ?? []);
    // Without a backup the newest rounds, and the first trace of the rack, are as old as anything that is known here.
    const known = [...rounds, ports.trace.read()?.since ?? clock.now()];
    const oldest = last?.at ?? instant(Math.min(...known));
    return backupReminder({
      now: clock.now(),
      lastBackupAt: last?.at ?? null,
      newReadings,
      otherChanges: Math.max(0, newChanges - newReadings),
      oldestUnsavedAt: newReadings > 0 || newChanges > 0 ? oldest : null,
    });
  };

  /** A part of the app that cannot be loaded is a trouble like any other. */
  const ask = async <T>(question: (store: RackStore) => Promise<Loaded<T>>): Promise<Loaded<T>> => {
    try {
      return await question(await ports.store());
    } catch {
      return { kind: 'trouble', trouble: 'failed' };
    }
  };
  const makeCard = async (pan: PanId): Promise<PanCard | StoreTrouble> => {
    try {
      return await ports.makeCard(pan);
    } catch {
      return 'failed';
    }
  };

  const isJudgedAsNow = (card: PanCard): boolean => card.judgedBy === judgingText(judging.value);

  const showCopy = (): void => {
    const copy = ports.copy.read();
    if (copy.length === 0) return;
    batch(() => {
      cards.value = cardsByPan(copy);
      state.value = { kind: 'open' };
    });
  };
  const show = ({ cards: kept, stale }: KeptCards): void => {
    const before = cards.value;
    // An old card is better than none while the new one is made.
    const old = stale.flatMap((pan) => before.get(pan) ?? []);
    const next = cardsByPan([...kept, ...old]);
    batch(() => {
      if (!areSameCards(before, next)) cards.value = next;
      if (next.size > 0 && old.length === stale.length) state.value = { kind: 'open' };
      // An empty rack waits until it is known whether it was lost.
      else if (next.size === 0 && before.size > 0) state.value = { kind: 'loading' };
    });
  };

  const load = async (): Promise<void> => {
    const isLatest = latest.begin();
    const [asked, counted] = [ask((store) => store.cards()), ask((store) => store.size())];
    if (state.value.kind === 'loading') showCopy();
    const kept = await asked;
    if (!isLatest()) return;
    if (kept.kind === 'trouble') {
      batch(() => {
        state.value = kept;
        // A copy alone is not a rack.
        if (!isChecked.value) cards.value = new Map();
      });
      return;
    }
    const outdated = kept.value.cards.filter((card) => !isJudgedAsNow(card));
    show(kept.value);
    const size = await counted;
    if (!isLatest()) return;
    if (size.kind === 'loaded') {
      readings.value = size.value.readings;
      soundBytes.value = size.value.soundBytes;
      changes.value = size.value.changes;
      pans = kept.value.cards.length + kept.value.stale.length;
      lookForLoss();
    }
    for (const pan of [...kept.value.stale, ...outdated.map((card) => card.pan)]) {
      const card = await makeCard(pan);
      if (!isLatest()) return;
      if (typeof card === 'string') {
        state.value = { kind: 'trouble', trouble: card };
        return;
      }
      cards.value = new Map(cards.value).set(pan, card);
    }
    batch(() => {
      state.value = { kind: 'open' };
      isChecked.value = true;
    });
    ports.copy.write([...cards.value.values()]);
  };

  ports.changes.onChange((change) => {
    // What was lost may be coming back.
    if (!isUnderWay(change) || lost.value !== null) void load();
  });

  return {
    state,
    isChecked,
    onRack,
    shown: computed(() =>
      inRackOrder(
        searchRack(onRack.value, search.value).filter(
          ({ family }) => (section.value ?? family) === family,
        ),
        order.value,
        clock.now(),
      ),
    ),
    removed: computed(() => [...cards.value.values()].filter((card) => card.isRemoved)),
    count: computed(() => onRack.value.length),
    search,
    order,
    section,
    soundBytes,
    reminder: computed(() => reminderOf([...cards.value.values()], readings.value)),
    clockDoubt: computed(() => {
      const rounds = [...cards.value.values()].flatMap(({ lastRoundAt }) => lastRoundAt ?? []);
      return clockDoubt(clock.now(), [ports.builtAt, ...rounds]);
    }),
    lost,
    goOnWithout() {
      lost.value = null;
      leaveTrace();
    },
    load,
  };
}

/**
 * Readings and blows of this window, in a round that goes on or on the bench: no card changes before the round ends,
 * and the rack is read again when its screen opens.
 */
const isUnderWay = ({ own }: RackChange): boolean =>
  own?.every(({ kind }) => kind === 'reading' || kind === 'blows') ?? false;
