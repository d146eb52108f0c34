// One pan as it is shown and edited: its fields, its rounds, and the readings of the newest one.
import { batch, type ReadonlySignal, signal } from '@preact/signals';
import type { PanStore } from '../../domain/ports/pan-store';
import {
  type Attachment,
  type PanFields,
  type PanId,
  type PanRecords,
  panId,
  type RackRecord,
  type ReadingRecord,
  type RecordId,
  type RoundId,
  type RoundStart,
  roundOf,
  type TunerVisit,
} from '../../domain/records/rack-records';
import { isBefore } from '../../domain/records/record-order';
import {
  type CurrentPan,
  currentPan,
  editOf,
  type PanHistory,
} from '../../domain/records/standing/current-pan';
import { openRounds } from '../../domain/records/standing/open-rounds';
import { readingsWithoutErased, withoutErased } from '../../domain/records/standing/without-erased';
import { baseRound } from '../../domain/rounds/base-round';
import { newestFinishedRounds } from '../../domain/rounds/finished-rounds';
import { createLatest } from '../asking/latest';
import type { OpenView } from '../asking/open-view';
import { type HeadPorts, newHead } from '../keeping/new-head';
import { photoOf } from '../keeping/photo-of';
import { readBack } from '../keeping/read-back';
import { createRecordKeeper, type RecordKeeper } from '../keeping/record-keeper';
import type { Undoable, UndoModel } from '../keeping/undo-model';

export type PanView = OpenView<{ readonly pan: OpenPan }>;

export interface OpenPan {
  readonly id: PanId;
  readonly records: PanRecords;
  readonly current: CurrentPan;
  /** Rounds that were finished, newest first. */
  readonly rounds: readonly RoundStart[];
  /** The newest round that was begun and not ended. */
  readonly openRound: RoundStart | null;
  /** Readings of the newest finished round. */
  readonly readings: readonly ReadingRecord[];
  /** The round that says how the pan stands: the newest that is not of few notes (`baseRound`). */
  readonly base: RoundStart | null;
  /** Readings of the rounds from `base` on. */
  readonly sinceBase: readonly ReadingRecord[];
  /** Readings outside of rounds since `base` and the newest full round, or since the newest one of any way. */
  readonly outside: readonly ReadingRecord[];
  readonly photo: Attachment | null;
}

export interface PanModel extends Pick<RecordKeeper, 'saving' | 'retry'> {
  readonly view: ReadonlySignal<PanView>;
  open(pan: PanId): Promise<void>;
  /** After a trouble: keeps what could not be kept, and opens the same pan again. */
  openAgain(): Promise<void>;
  /** Puts a new pan on the rack; `kept` resolves once it is on disk. */
  add(
    fields: PanFields,
    photo: Uint8Array<ArrayBuffer> | null,
  ): { readonly pan: PanId; readonly kept: Promise<void> };
  /**
   * Resolves once the changes are kept. A new photo comes as JPEG. `known` is what was on the screen when the
   * changes were begun: what was written since, in another window, then stands beside them and is asked about.
   * With `undoable` the edit can be taken back for a while.
   */
  save(
    changes: Partial<PanFields>,
    photo?: Uint8Array<ArrayBuffer> | null,
    known?: PanHistory,
    undoable?: Undoable,
  ): Promise<void>;
  /** Writes down that a tuner was here, and what was done. */
  keepVisit(visit: TunerAnswers): Promise<void>;
  /** Takes a record out of everything that is computed; with `undoable` that can be taken back for a while. */
  erase(target: RecordId, undoable?: Undoable): Promise<void>;
  /** Readings of one round, erased ones taken out; null if they cannot be read. */
  readingsOf(round: RoundId): Promise<readonly ReadingRecord[] | null>;
}

/** What is written down after a tuner's visit. */
export type TunerAnswers = Pick<
  TunerVisit,
  'visitedAt' | 'who' | 'done' | 'remarks' | 'nextVisit' | 'startsBaseline'
>;

export interface PanPorts extends HeadPorts {
  readonly undo: Pick<UndoModel, 'propose'>;
  readonly store: Pick<
    PanStore,
    'pan' | 'readingsOfRound' | 'readingsOutside' | 'attachment' | 'keep' | 'onChange'
  >;
}

export function createPanModel({ store, clock, identities, turns, undo }: PanPorts): PanModel {
  const keeper = createRecordKeeper(store);
  const view = signal<PanView>({ kind: 'loading' });
  const latest = createLatest();
  /** Records made here that are read again once they are kept, whatever is told of them. */
  const awaited = new Set<RecordId>();

  const read = async (id: PanId): Promise<PanView> => {
    const loaded = await store.pan(id);
    if (loaded.kind === 'trouble') return loaded;
    const records = loaded.value;
    const valid = withoutErased(records);
    if (valid.edits.length === 0) return { kind: 'missing' };
    const current = currentPan(records);
    const rounds = newestFinishedRounds(records, Number.POSITIVE_INFINITY);
    const [newest] = rounds;
    const { photo: photoId } = current.fields;
    const since = rounds.find(({ way }) => way !== 'quick') ?? newest;
    const { layout } = current.fields;
    const { erasures } = records;
    const readings = await readBack(store, { rounds, layout, erasures, full: 1 });
    if (readings.kind === 'trouble') return readings;
    const base = baseRound(rounds, readings.readings, layout);
    const [outside, photo] = await Promise.all([
      store.readingsOutside(id, since && base && isBefore(base, since) ? base : (since ?? null)),
      photoId === null ? null : store.attachment(photoId),
    ]);
    if (outside.kind === 'trouble') return outside;
    return {
      kind: 'open',
      pan: {
        id,
        records,
        current,
        rounds,
        openRound: openRounds(records)[0] ?? null,
        base,
        sinceBase: readings.readings,
        readings: readings.readings.filter(({ round }) => newest && round === roundOf(newest)),
        outside: readingsWithoutErased(outside.value, erasures),
        photo: photo?.kind === 'loaded' ? photo.value : null,
      },
    };
  };
  let wanted: PanId | null = null;
  let isReading = false;
  const load = async (id: PanId): Promise<void> => {
    wanted = id;
    isReading = true;
    const isLatest = latest.begin();
    const next = await read(id);
    if (!isLatest()) return;
    isReading = false;
    view.value = next;
  };
  const openPan = (): OpenPan | null => (view.value.kind === 'open' ? view.value.pan : null);
  const head = (pan: PanId) => newHead(pan, { clock, identities, turns });

  const keep = (record: RackRecord, attachment: Attachment | null = null): Promise<void> =>
    keeper.keep([record], attachment ? [attachment] : []);
  /** Told which pan, because another one may be open when it is taken back. */
  const erase = async (pan: PanId, target: RecordId, undoable?: Undoable): Promise<void> => {
    const record = { ...head(pan), kind: 'erasure', target } as const;
    awaited.add(record.id);
    if (undoable) undo.propose(undoable, () => void erase(pan, record.id));
    await keep(record);
    if (openPan()?.id === pan) await load(pan);
  };
  store.onChange(({ pans, own }) => {
    const pan = openPan();
    if (!pan || !pans.includes(pan.id)) return;
    // Written in another window, or by another part of this one: what is shown is read again. So it is where it was
    // being read when this was written: then it may be in what was read, or not.
    const isNews = (record: RackRecord) =>
      !awaited.has(record.id) && (isReading || !isInView(record, pan));
    if (own?.some(isNews) ?? true) void load(pan.id);
  });

  return {
    view,
    saving: keeper.saving,
    retry: keeper.retry,
    async open(id) {
      const isShown = openPan()?.id === id;
      if (!isShown) view.value = { kind: 'loading' };
      await load(id);
    },
    async openAgain() {
      await keeper.retry();
      if (wanted !== null) await load(wanted);
    },
    add(fields, photo) {
      const pan = panId(identities.next());
      const attachment = photo && photoOf(photo, pan, { clock, identities });
      const all = attachment ? { ...fields, photo: attachment.id } : fields;
      const edit = editOf(pan, { edits: [], erasures: [] }, all, head(pan));
      return { pan, kept: keep(edit, attachment) };
    },
    async save(changes, photo = null, known, undoable) {
      const pan = openPan();
      if (!pan) return;
      const attachment = photo && photoOf(photo, pan.id, { clock, identities });
      const fields = attachment ? { ...changes, photo: attachment.id } : changes;
      const edit = editOf(pan.id, known ?? pan.records, fields, head(pan.id));
      const records = { ...pan.records, edits: [...pan.records.edits, edit] };
      // What was typed is shown at once; that it is kept is said by `saving`. What is being read does not have it.
      batch(() => {
        latest.drop();
        const current = currentPan(records);
        const shown = { ...pan, records, current, photo: attachment ?? pan.photo };
        view.value = { kind: 'open', pan: shown };
      });
      if (undoable) undo.propose(undoable, () => void erase(pan.id, edit.id));
      await keep(edit, attachment);
    },
    async keepVisit(visit) {
      const pan = openPan();
      if (!pan) return;
      const record = { ...head(pan.id), kind: 'tuner-visit', ...visit } as const;
      awaited.add(record.id);
      await keep(record);
      await load(pan.id);
    },
    async erase(target, undoable) {
      const pan = openPan();
      if (pan) await erase(pan.id, target, undoable);
    },
    async readingsOf(round) {
      const loaded = await store.readingsOfRound(round);
      if (loaded.kind === 'trouble') return null;
      return readingsWithoutErased(loaded.value, openPan()?.records.erasures ?? []);
    },
  };
}

/**
 * Whether an open pan is already as this record leaves it: of the readings of rounds it holds only the newest round's.
 */
function isInView(record: RackRecord, { records, rounds: [newest] }: OpenPan): boolean {
  if (record.kind === 'pan-edit') return records.edits.some(({ id }) => id === record.id);
  if (record.kind !== 'reading' || record.round === null) return false;
  return !newest || record.round !== roundOf(newest);
}
