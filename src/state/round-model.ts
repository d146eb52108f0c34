// A round as it happens: strikes come in, readings are kept before the next note is announced.
import { computed, type ReadonlySignal, signal } from '@preact/signals';
import { notesOf } from '../domain/pans/layout';
import type { PanStore, StoreTrouble } from '../domain/ports/pan-store';
import type { Clock, Identities } from '../domain/ports/phone-ports';
import type { Announcer } from '../domain/ports/sound-ports';
import {
  type Attachment,
  attachmentId,
  type Mark,
  type MarkKind,
  type PanFields,
  type PanId,
  type RackRecord,
  type ReadingRecord,
  type RecordId,
  type RoundConditions,
  type RoundEnd,
  type RoundId,
  type RoundStart,
  type RoundWay,
  recordId,
  roundOf,
} from '../domain/records/rack-records';
import { soundAttachment } from '../domain/records/sound-attachment';
import { strikeRecordOf } from '../domain/records/strike-record';
import type { MidiNote } from '../domain/tuning/units';
import { knownNotes } from '../domain/work/known-notes';
import type { Reading } from '../domain/work/reading';
import { octaveOrder } from '../domain/work/round-order';
import {
  beginRound,
  chooseNote,
  isDone,
  isFinished,
  listeningBegan,
  markNote,
  nextNote,
  type RoundNews,
  type RoundProgress,
  type RoundStep,
  strikeHeard,
} from '../domain/work/round-progress';
import type { ListenModel } from './listen-model';
import { noteToMark, type OpenRound } from './open-round';
import { type ReadRound, readRound } from './read-round';
import { createRecordKeeper, type RecordKeeper } from './record-keeper';
import type { SettingsModel } from './settings-model';

export interface RoundPorts {
  readonly store: PanStore;
  readonly listen: ListenModel;
  readonly settings: Pick<SettingsModel, 'a4' | 'announcement' | 'keepsSound'>;
  readonly announcer: Announcer;
  readonly clock: Clock;
  readonly identities: Identities;
  readonly appVersion: string;
  /** What the voice says. */
  readonly newsWords: (news: RoundNews) => string;
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

export interface NewRound {
  readonly pan: PanId;
  readonly fields: PanFields;
  readonly way: RoundWay;
  readonly conditions: RoundConditions;
  /** In which order a guided round asks for the notes; octave pairs, highest first, where nothing else is wanted. */
  readonly order?: readonly MidiNote[];
  /** The pan was knocked: choked notes are to be heard as notes. */
  readonly mayBeChoked?: boolean;
  /** Newest readings of the pan, to help the ear. */
  readonly earlier: readonly ReadingRecord[];
}

/** What a step makes that is to be kept. */
interface Made {
  readonly record: RackRecord;
  readonly attachments: readonly Attachment[];
}

export function createRoundModel(ports: RoundPorts): RoundModel {
  const { store, listen, settings, announcer, clock, identities } = ports;
  const keeper = createRecordKeeper(store);
  const view = signal<RoundView>({ kind: 'none' });
  const open = computed(() => (view.value.kind === 'open' ? view.value.round : null));
  let earlier: readonly ReadingRecord[] = [];
  /** The records that what is shown follows from: read, or made here. */
  const known = new Set<RecordId>();
  /** A round that was opened later makes an older answer of the store worthless. */
  let turn = 0;

  const show = (round: OpenRound): void => {
    view.value = { kind: 'open', round };
  };
  const newHead = (pan: PanId) => ({
    shape: 1 as const,
    id: recordId(identities.next()),
    pan,
    at: clock.now(),
  });
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

  const announce = async (news: RoundNews, round: OpenRound): Promise<void> => {
    const next = news.kind === 'next' ? news.note : null;
    if (next === null) listen.expectAny();
    else listen.expect(next);
    // In a quick round the next strike comes at once: a sound of our own would cover it.
    if (round.start.way === 'quick' && news.kind === 'taken') return;
    switch (settings.announcement.value) {
      case 'nothing':
        return;
      case 'beep':
        return listen.ignoreDuring(announcer.beep());
      case 'voice':
        return listen.ignoreDuring(announcer.say(ports.newsWords(news)));
    }
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
    if (step.announce && now.progress === progress) await announce(step.announce, now);
  };

  const endOf = ({ start }: OpenRound, ending: RoundEnd['ending']): RoundEnd => ({
    ...newHead(start.pan),
    kind: 'round-end',
    round: roundOf(start),
    ending,
  });

  const readingRecord = async ({ start }: OpenRound, reading: Reading): Promise<Made> => {
    const record: ReadingRecord = {
      ...newHead(start.pan),
      kind: 'reading',
      round: roundOf(start),
      note: reading.note,
      strikes: reading.heard.map(strikeRecordOf),
      taking: { ...listen.taking.value, appVersion: ports.appVersion },
      sound: null,
    };
    const newest = reading.heard.at(-1);
    const sound = settings.keepsSound.value && newest ? await listen.soundOf(newest) : null;
    if (!sound) return { record, attachments: [] };
    const id = attachmentId(identities.next());
    const attachment = soundAttachment(sound, { id, pan: start.pan, at: record.at });
    return { record: { ...record, sound: id }, attachments: [attachment] };
  };

  listen.onHeard((heard) => {
    const round = open.value;
    if (!round || round.isOver || heard.kind !== 'strike' || !listen.isOnPan.value) return;
    const step = strikeHeard(round.progress, heard);
    const { event } = step;
    if (event.kind === 'ignored') return;
    const isTaken = event.kind === 'locked' || event.kind === 'refined';
    void take(round, step, isTaken ? readingRecord(round, event.reading) : null);
  });

  const startListening = (round: OpenRound): Promise<void> => {
    show({ ...round, progress: listeningBegan(round.progress) });
    const { fields, start, progress, mayBeChoked } = round;
    const notes = notesOf(fields.layout);
    const pan = { notes, known: knownOf(round), a4: start.a4, mayBeChoked };
    return listen.listenTo(pan, nextNote(progress));
  };

  return {
    view,
    saving: keeper.saving,
    retry: keeper.retry,
    begin({ pan, fields, way, conditions, order: wanted, mayBeChoked = false, earlier: before }) {
      turn++;
      earlier = before;
      const order = wanted ?? octaveOrder(notesOf(fields.layout));
      const start: RoundStart = {
        ...newHead(pan),
        kind: 'round',
        way,
        order,
        conditions,
        a4: fields.a4 ?? settings.a4.value,
      };
      const progress = beginRound(way, order);
      const round = {
        fields,
        start,
        progress,
        kept: progress,
        readings: [],
        lastDone: null,
        isOver: false,
        mayBeChoked,
      };
      void keep([start]);
      void startListening(round);
      return roundOf(start);
    },
    async open(pan, round) {
      if (open.value && roundOf(open.value.start) === round) return;
      const mine = ++turn;
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
      const { start } = round;
      const record: Mark = {
        ...newHead(start.pan),
        kind: 'mark',
        round: roundOf(start),
        note,
        mark,
      };
      void take(round, step, Promise.resolve({ record, attachments: [] }));
    },
    choose(note) {
      const round = open.value;
      if (!round || round.isOver) return;
      const progress = chooseNote(round.progress, note);
      show({ ...round, progress, kept: chooseNote(round.kept, note) });
      const next = nextNote(progress);
      if (next === null) listen.expectAny();
      else listen.expect(next);
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

/** The round once `record`, and with it all of `progress`, is on disk. */
const keptUpTo = (round: OpenRound, progress: RoundProgress, record: RackRecord): OpenRound => ({
  ...round,
  kept: { ...progress, chosen: round.progress.chosen },
  readings: record.kind === 'reading' ? [...round.readings, record] : round.readings,
});
