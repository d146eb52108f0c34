// A knock check as it is answered, and the stopgaps of a pan.
import { type ReadonlySignal, signal } from '@preact/signals';
import { softOrder } from '../../domain/knock-check/soft-order';
import type { PanStore } from '../../domain/ports/pan-store';
import type { ImpactPlace } from '../../domain/records/impact-place';
import { type LookAnswer, type LookKind, lookKinds } from '../../domain/records/look-kinds';
import type {
  Attachment,
  AttachmentId,
  KnockCheck,
  Look,
  PanId,
  RoundId,
  StopgapKind,
} from '../../domain/records/rack-records';
import type { MidiNote } from '../../domain/tuning/units';
import { type HeadPorts, newHead } from '../keeping/new-head';
import { photoOf } from '../keeping/photo-of';
import { createRecordKeeper, type RecordKeeper } from '../keeping/record-keeper';
import type { OpenPan } from '../pan/pan-model';
import type { RoundModel } from './round-model';

/** What was seen so far; nothing of it is kept before `keep` or `beginRound`. */
export interface KnockDraft {
  readonly pan: PanId;
  readonly answers: ReadonlyMap<LookKind, LookAnswer>;
  /** JPEG. */
  readonly photos: ReadonlyMap<LookKind, Uint8Array<ArrayBuffer>>;
  readonly impact: ImpactPlace | null;
  readonly remarks: string;
}

export interface KnockModel extends Pick<RecordKeeper, 'saving' | 'retry'> {
  /** Null before a pan's check was opened. */
  readonly draft: ReadonlySignal<KnockDraft | null>;
  /** Goes on with what was answered about this pan, or begins anew. */
  open(pan: PanId): void;
  change(changes: Partial<Omit<KnockDraft, 'pan' | 'answers' | 'photos'>>): void;
  answer(look: LookKind, answer: LookAnswer): void;
  /** Null takes the photo away. */
  photo(look: LookKind, bytes: Uint8Array<ArrayBuffer> | null): void;
  /** Keeps what was seen, without a round; resolves once it is on disk. */
  keep(): Promise<void>;
  /** Keeps what was seen and begins the soft round, the side that was hit first. Call inside a tap. */
  beginRound(pan: OpenPan): RoundId | null;
  /** A photo of a check that was kept; null where it cannot be read. */
  photoOf(id: AttachmentId): Promise<Uint8Array<ArrayBuffer> | null>;
  /** Puts a magnet on a note, or takes it off (`none`). */
  logStopgap(pan: PanId, note: MidiNote, stopgap: StopgapKind): Promise<void>;
}

export interface KnockPorts extends HeadPorts {
  readonly store: Pick<PanStore, 'attachment' | 'keep'>;
  readonly round: Pick<RoundModel, 'begin'>;
}

const empty = (pan: PanId): KnockDraft => ({
  pan,
  answers: new Map(),
  photos: new Map(),
  impact: null,
  remarks: '',
});

export function createKnockModel(ports: KnockPorts): KnockModel {
  const { store, round, clock, identities, turns } = ports;
  const keeper = createRecordKeeper(store);
  const draft = signal<KnockDraft | null>(null);
  const head = (pan: PanId) => newHead(pan, { clock, identities, turns });
  const keepDraft = (made: KnockDraft, ofRound: RoundId | null): Promise<void> => {
    const photos: Attachment[] = [];
    const looks = lookKinds.flatMap((look): readonly Look[] => {
      const answer = made.answers.get(look);
      if (!answer) return [];
      const bytes = made.photos.get(look);
      const photo = bytes ? photoOf(bytes, made.pan, { clock, identities }) : null;
      if (photo) photos.push(photo);
      return [{ look, answer, photo: photo?.id ?? null }];
    });
    const check: KnockCheck = {
      ...head(made.pan),
      kind: 'knock-check',
      round: ofRound,
      looks,
      impact: made.impact,
      remarks: made.remarks.trim(),
    };
    draft.value = null;
    return keeper.keep([check], photos);
  };
  const change = (changes: Partial<KnockDraft>): void => {
    if (draft.value) draft.value = { ...draft.value, ...changes };
  };

  return {
    draft,
    saving: keeper.saving,
    retry: keeper.retry,
    open(pan) {
      if (draft.value?.pan !== pan) draft.value = empty(pan);
    },
    change,
    answer(look, answer) {
      if (draft.value) change({ answers: new Map(draft.value.answers).set(look, answer) });
    },
    photo(look, bytes) {
      if (!draft.value) return;
      const photos = new Map(draft.value.photos);
      if (bytes) photos.set(look, bytes);
      else photos.delete(look);
      change({ photos });
    },
    async keep() {
      if (draft.value) await keepDraft(draft.value, null);
    },
    beginRound(pan) {
      const made = draft.value;
      if (!made || made.pan !== pan.id) return null;
      const { fields } = pan.current;
      const id = round.begin({
        pan: pan.id,
        fields,
        way: 'guided',
        order: softOrder(fields.layout, made.impact),
        // No round is begun from here on a hot pan.
        conditions: {
          temperature: null,
          standing: made.answers.get('heat') === 'no' ? 'settled' : null,
        },
        mayBeChoked: true,
        earlier: [...pan.readings, ...pan.outside],
      });
      void keepDraft(made, id);
      return id;
    },
    async photoOf(id) {
      const loaded = await store.attachment(id);
      return loaded.kind === 'loaded' ? (loaded.value?.bytes ?? null) : null;
    },
    async logStopgap(pan, note, stopgap) {
      await keeper.keep([{ ...head(pan), kind: 'stopgap', note, stopgap }]);
    },
  };
}
