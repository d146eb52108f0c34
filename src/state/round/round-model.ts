// A round as it happens: strikes come in, readings are kept before the next note is announced.
import { computed, type ReadonlySignal, signal } from '@preact/signals';
import { notesOf } from '../../domain/pans/layout';
import type { PanStore } from '../../domain/ports/pan-store';
import { knownNotes } from '../../domain/reading/known-notes';
import {
  type Attachment,
  type MarkKind,
  type PanId,
  type RackRecord,
  type ReadingRecord,
  type RecordId,
  type RoundId,
  roundOf,
} from '../../domain/records/rack-records';
import {
  endsByItself,
  isDone,
  listeningBegan,
  markNote,
  nextNote,
  noteChosen,
  type RoundStep,
  strikeHeard,
} from '../../domain/rounds/round-progress';
import type { MidiNote } from '../../domain/tuning/units';
import { createLatest } from '../asking/latest';
import type { OpenView } from '../asking/open-view';
import { newHead } from '../keeping/new-head';
import { createRecordKeeper, type RecordKeeper } from '../keeping/record-keeper';
import type { UndoModel } from '../keeping/undo-model';
import type { ListenModel } from '../listening/listen-model';
import type { SettingsModel } from '../settings/settings-model';
import { announceNews, type NewsPorts } from './announce-news';
import { begunRound, type NewRound } from './new-round';
import { keptUpTo, noteToMark, type OpenRound } from './open-round';
import { type ReadRound, readRound } from './read-round';
import { createRoundMaking, type Made, type RoundMakingPorts } from './round-making';

export interface RoundPorts extends NewsPorts, RoundMakingPorts {
  readonly store: Pick<PanStore, 'pan' | 'readingsOfRound' | 'keep' | 'onChange'>;
  readonly listen: ListenModel;
  readonly undo: Pick<UndoModel, 'propose'>;
  readonly settings: Pick<SettingsModel, 'a4' | 'announcement' | 'keepsSound'>;
}

export type RoundView = OpenView<{ readonly round: OpenRound }>;

export interface RoundModel extends Pick<RecordKeeper, 'saving' | 'retry'> {
  readonly view: ReadonlySignal<RoundView>;
  /** Begins a round on a pan and listens. Call inside a tap. */
  begin(begin: NewRound): RoundId;
  /** Shows a round that was begun before; `listen` goes on with it. */
  open(pan: PanId, round: RoundId): Promise<void>;
  /** Opens the microphone for the round that is shown. Call inside a tap. */
  listen(): Promise<void>;
  /** Marks the note that is asked for or was done last; `none` takes the mark back. */
  mark(mark: MarkKind): void;
  /** The note to be measured next, also one that is done; null: back to the order. */
  choose(note: MidiNote | null): void;
  /** Ends the round with what has been heard. */
  finish(): void;
}

export function createRoundModel(ports: RoundPorts): RoundModel {
  const { store, listen, settings } = ports;
  const keeper = createRecordKeeper(store);
  const making = createRoundMaking(ports);
  const view = signal<RoundView>({ kind: 'loading' });
  const open = computed(() => (view.value.kind === 'open' ? view.value.round : null));
  let earlier: readonly ReadingRecord[] = [];
  /** The records that what is shown follows from: read, or made here. */
  const known = new Set<RecordId>();
  const latest = createLatest();

  const show = (round: OpenRound): void => {
    view.value = { kind: 'open', round };
  };
  const knownOf = (round: OpenRound) => knownNotes([...earlier, ...round.readings]);

  /** The round as it is on disk, where another window may have gone on with it. */
  const takeOver = ({ round, from }: Extract<ReadRound, { readonly kind: 'read' }>): void => {
    for (const id of from) known.add(id);
    show(round);
  };
  const keep = (records: readonly RackRecord[], attachments: readonly Attachment[] = []) => {
    for (const { id } of records) known.add(id);
    return keeper.keep(records, attachments);
  };
  store.onChange(async ({ pans, own }) => {
    const round = open.value;
    if (!round || !pans.includes(round.start.pan)) return;
    // What was made here need not be read back.
    if (own?.every(({ id }) => known.has(id))) return;
    const isLatest = latest.join();
    const read = await readRound(store, round.start.pan, roundOf(round.start));
    if (!isLatest() || read.kind !== 'read') return;
    // An end that was erased leaves nothing unknown.
    const isSame =
      read.from.every((id) => known.has(id)) && read.round.isOver === open.value?.isOver;
    if (isSame) return;
    if (!listen.isListening.value) return takeOver(read);
    // This window has the microphone, and strikes under way; of the other's word only the last one counts.
    if (!read.round.isOver || !open.value) return;
    void listen.stop();
    show({ ...open.value, isOver: true });
  });

  const expectNext = (note: MidiNote | null): void => {
    if (note === null) listen.expectAny();
    else listen.expect(note);
  };

  /** Keeps what a step made, and only then says what comes next. */
  const take = async (before: OpenRound, step: RoundStep, toKeep: Promise<Made> | null) => {
    const { event, progress } = step;
    const isOver = endsByItself(step);
    const note = 'note' in event ? event.note : before.lastDone;
    const lastDone = event.kind === 'counted' ? before.lastDone : note;
    show({ ...before, progress, lastDone });
    if (!toKeep) return;
    const isLatest = latest.join();
    const { record, attachments } = await toKeep;
    const end = isOver ? [making.end(before, 'finished')] : [];
    await keep([record, ...end], attachments);
    const now = open.value && keptUpTo(open.value, progress, record);
    if (!isLatest() || !now) return;
    show(now);
    if (isOver) {
      show({ ...now, isOver: true });
      void listen.stop();
    } else {
      listen.knowNow(knownOf(now));
    }
    // Another note may have been done meanwhile: what is said is true now.
    if (!step.announce || now.progress !== progress) return;
    expectNext(step.announce.kind === 'next' ? step.announce.note : null);
    await announceNews(step.announce, now.start.way, ports);
  };

  listen.onHeard((heard) => {
    const round = open.value;
    if (!round || round.isOver || !listen.isOnPan.value) return;
    // Until the last note is on disk nobody has been told which one is next: what is heard then counts for none.
    const asked = nextNote(round.progress);
    making.hear(heard, asked === nextNote(round.kept) ? asked : null);
    if (heard.kind !== 'strike') return;
    const step = strikeHeard(round.progress, heard);
    const { event } = step;
    if (event.kind === 'ignored') return;
    const isTaken = event.kind === 'locked' || event.kind === 'refined';
    void take(round, step, isTaken ? making.reading(round, event.reading) : null);
  });

  const startListening = (round: OpenRound): Promise<void> => {
    show({ ...round, progress: listeningBegan(round.progress) });
    making.beginListening();
    const { fields, start, progress, mayBeChoked } = round;
    const notes = notesOf(fields.layout);
    const pan = { notes, known: knownOf(round), a4: start.a4, mayBeChoked };
    return listen.listenTo(pan, nextNote(progress));
  };

  const markAs = (round: OpenRound, note: MidiNote, mark: MarkKind): void =>
    void take(round, markNote(round.progress, note, mark), making.mark(round, note, mark));
  /** Wherever the user is by then. A round that the mark ended stays ended: its result leads back to it. */
  const unmark = (round: OpenRound, note: MidiNote, mark: MarkKind): void => {
    const now = open.value;
    if (now && !now.isOver && now.start.id === round.start.id) markAs(now, note, mark);
    else void making.mark(round, note, mark).then(({ record }) => keep([record]));
  };

  return {
    view,
    saving: keeper.saving,
    retry: keeper.retry,
    begin(begin) {
      latest.begin();
      making.forget();
      earlier = begin.earlier;
      const round = begunRound(begin, settings.a4.value, newHead(begin.pan, ports));
      void keep([round.start]);
      void startListening(round);
      return roundOf(round.start);
    },
    async open(pan, round) {
      // One that is over may have been opened again meanwhile, from its result.
      if (open.value && !open.value.isOver && roundOf(open.value.start) === round) return;
      const isLatest = latest.begin();
      making.forget();
      view.value = { kind: 'loading' };
      const read = await readRound(store, pan, round);
      if (!isLatest()) return;
      if (read.kind !== 'read') {
        view.value = read;
        return;
      }
      earlier = [];
      takeOver(read);
    },
    async listen() {
      if (open.value && !open.value.isOver) await startListening(open.value);
    },
    mark(mark) {
      const round = open.value;
      const note = round && noteToMark(round);
      if (!round || round.isOver || note === null) return;
      const { mark: earlierMark = 'none' } = round.kept.notes.get(note) ?? {};
      markAs(round, note, mark);
      if (mark !== 'none')
        ports.undo.propose({ kind: 'mark', note, mark }, () => unmark(round, note, earlierMark));
    },
    choose(note) {
      const round = open.value;
      if (!round || round.isOver) return;
      const progress = noteChosen(round.progress, note);
      show({ ...round, progress, kept: noteChosen(round.kept, note) });
      expectNext(nextNote(progress));
    },
    finish() {
      const round = open.value;
      if (!round || round.isOver) return;
      const isLatest = latest.join();
      void listen.stop();
      // A round in which nothing was done says nothing about the pan.
      const ending = round.progress.order.some((note) => isDone(round.progress, note));
      void keep([making.end(round, ending ? 'finished' : 'left')]).then(() => {
        if (isLatest() && open.value) show({ ...open.value, isOver: true });
      });
    },
  };
}
