// A round as it happens: strikes come in, readings are kept before the next note is announced.
import { computed, type ReadonlySignal, signal } from '@preact/signals';
import { notesOf } from '../../domain/pans/layout';
import type { PanStore, StoreTrouble } from '../../domain/ports/pan-store';
import { knownNotes } from '../../domain/reading/known-notes';
import type { Reading } from '../../domain/reading/reading';
import {
  type Attachment,
  type MarkKind,
  type PanId,
  type RackRecord,
  type ReadingRecord,
  type RecordId,
  type RoundEnd,
  type RoundId,
  roundOf,
} from '../../domain/records/rack-records';
import {
  type BlowsSoFar,
  blowHeard,
  blowsWithout,
  noBlows,
  refusedBlowsOf,
} from '../../domain/rounds/refused-blows';
import {
  chooseNote,
  isDone,
  isFinished,
  listeningBegan,
  markNote,
  nextNote,
  type RoundStep,
  strikeHeard,
} from '../../domain/rounds/round-progress';
import type { MidiNote } from '../../domain/tuning/units';
import { type HeadPorts, newHead } from '../keeping/new-head';
import { createRecordKeeper, type RecordKeeper } from '../keeping/record-keeper';
import { type SoundKeeping, withSound } from '../keeping/with-sound';
import type { ListenModel } from '../listening/listen-model';
import type { SettingsModel } from '../settings/settings-model';
import { announceNews, type NewsPorts } from './announce-news';
import { begunRound, type NewRound } from './new-round';
import { keptUpTo, noteToMark, type OpenRound } from './open-round';
import { type ReadRound, readRound } from './read-round';
import { endRecord, markRecord, readingRecord } from './round-records';

export interface RoundPorts extends NewsPorts, SoundKeeping, HeadPorts {
  readonly store: PanStore;
  readonly listen: ListenModel;
  readonly settings: Pick<SettingsModel, 'a4' | 'announcement' | 'keepsSound'>;
  readonly appVersion: string;
}

export type RoundView =
  | { readonly kind: 'none' }
  | { readonly kind: 'loading' }
  /** There is no such round on this phone. */
  | { readonly kind: 'missing' }
  | { readonly kind: 'trouble'; readonly trouble: StoreTrouble }
  | { readonly kind: 'open'; readonly round: OpenRound };

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

/** What a step makes that is to be kept. */
interface Made {
  readonly record: RackRecord;
  readonly attachments: readonly Attachment[];
}

export function createRoundModel(ports: RoundPorts): RoundModel {
  const { store, listen, settings } = ports;
  const keeper = createRecordKeeper(store);
  const view = signal<RoundView>({ kind: 'none' });
  const open = computed(() => (view.value.kind === 'open' ? view.value.round : null));
  let earlier: readonly ReadingRecord[] = [];
  /** The records that what is shown follows from: read, or made here. */
  const known = new Set<RecordId>();
  /** A round that was opened later makes an older answer of the store worthless. */
  let turn = 0;
  let blows: BlowsSoFar = noBlows;

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
  store.onChange(async (pans) => {
    const round = open.value;
    if (!round || !pans.includes(round.start.pan)) return;
    const mine = turn;
    const read = await readRound(store, round.start.pan, roundOf(round.start));
    if (mine !== turn || read.kind !== 'read' || read.from.every((id) => known.has(id))) return;
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
  const take = async (before: OpenRound, step: RoundStep, making: Promise<Made> | null) => {
    const { event, progress } = step;
    const isOver = isFinished(progress);
    const note = 'note' in event ? event.note : before.lastDone;
    const lastDone = event.kind === 'counted' ? before.lastDone : note;
    show({ ...before, progress, lastDone });
    if (!making) return;
    const mine = turn;
    const { record, attachments } = await making;
    const end = isOver ? [endOf(before, 'finished')] : [];
    await keep([record, ...end], attachments);
    const now = open.value && keptUpTo(open.value, progress, record);
    if (mine !== turn || !now) return;
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

  const endOf = ({ start }: OpenRound, ending: RoundEnd['ending']): RoundEnd =>
    endRecord(start, ending, newHead(start.pan, ports));
  /** The refused blows that go into the record of a note that is done. */
  const takeRefused = (note: MidiNote) => {
    const refused = refusedBlowsOf(blows, note);
    blows = blowsWithout(blows, note);
    return refused;
  };
  const madeOf = ({ start }: OpenRound, reading: Reading): Promise<Made> => {
    const taking = { ...listen.taking.value, appVersion: ports.appVersion };
    const taken = { reading, taking, refused: takeRefused(reading.note) };
    const record = readingRecord(start, taken, newHead(start.pan, ports));
    return withSound(record, reading.heard.at(-1), ports);
  };

  listen.onHeard((heard) => {
    const round = open.value;
    if (!round || round.isOver || !listen.isOnPan.value) return;
    // Until the last note is on disk nobody has been told which one is next: what is heard then counts for none.
    const asked = nextNote(round.progress);
    blows = blowHeard(blows, heard, asked === nextNote(round.kept) ? asked : null);
    if (heard.kind !== 'strike') return;
    const step = strikeHeard(round.progress, heard);
    const { event } = step;
    if (event.kind === 'ignored') return;
    const isTaken = event.kind === 'locked' || event.kind === 'refined';
    void take(round, step, isTaken ? madeOf(round, event.reading) : null);
  });

  const startListening = (round: OpenRound): Promise<void> => {
    show({ ...round, progress: listeningBegan(round.progress) });
    // Times begin anew with the microphone.
    blows = { ...blows, last: null };
    const { fields, start, progress, mayBeChoked } = round;
    const notes = notesOf(fields.layout);
    const pan = { notes, known: knownOf(round), a4: start.a4, mayBeChoked };
    return listen.listenTo(pan, nextNote(progress));
  };

  return {
    view,
    saving: keeper.saving,
    retry: keeper.retry,
    begin(begin) {
      turn++;
      blows = noBlows;
      earlier = begin.earlier;
      const round = begunRound(begin, settings.a4.value, newHead(begin.pan, ports));
      void keep([round.start]);
      void startListening(round);
      return roundOf(round.start);
    },
    async open(pan, round) {
      if (open.value && roundOf(open.value.start) === round) return;
      const mine = ++turn;
      blows = noBlows;
      view.value = { kind: 'loading' };
      const read = await readRound(store, pan, round);
      if (mine !== turn) return;
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
      const step = markNote(round.progress, note, mark);
      const marked = { note, mark, refused: takeRefused(note) };
      const record = markRecord(round.start, marked, newHead(round.start.pan, ports));
      void take(round, step, Promise.resolve({ record, attachments: [] }));
    },
    choose(note) {
      const round = open.value;
      if (!round || round.isOver) return;
      const progress = chooseNote(round.progress, note);
      show({ ...round, progress, kept: chooseNote(round.kept, note) });
      expectNext(nextNote(progress));
    },
    finish() {
      const round = open.value;
      if (!round || round.isOver) return;
      const mine = turn;
      void listen.stop();
      // A round in which nothing was done says nothing about the pan.
      const ending = round.progress.order.some((note) => isDone(round.progress, note));
      void keep([endOf(round, ending ? 'finished' : 'left')]).then(() => {
        if (mine === turn && open.value) show({ ...open.value, isOver: true });
      });
    },
  };
}
