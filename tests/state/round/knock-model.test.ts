import { describe, expect, it } from 'vitest';
import { lowCLead } from '../../../src/domain/pans/layouts/low-c-lead';
import { lookKinds } from '../../../src/domain/records/look-kinds';
import { attachmentId, panId, roundId } from '../../../src/domain/records/rack-records';
import { restoreAttachment } from '../../../src/domain/records/restore/restore-attachment';
import { restoreRecord } from '../../../src/domain/records/restore/restore-record';
import { currentPan } from '../../../src/domain/records/standing/current-pan';
import { instant, midiNote } from '../../../src/domain/tuning/units';
import { createRecordTurns } from '../../../src/state/keeping/record-turns';
import type { OpenPan } from '../../../src/state/pan/pan-model';
import { createKnockModel } from '../../../src/state/round/knock-model';
import type { NewRound } from '../../../src/state/round/new-round';
import { sampleEdit } from '../../storage/rack/rack-sample';
import { memoryPanStore } from '../memory-pan-store';

const pan = panId('pan-1');
const settle = () => new Promise((done) => setTimeout(done, 0));

async function made() {
  const memory = memoryPanStore();
  await memory.store.keep([sampleEdit('edit-1', 'Heron')]);
  const begun: NewRound[] = [];
  let named = 0;
  const model = createKnockModel({
    store: memory.store,
    round: {
      begin: (round) => {
        begun.push(round);
        return roundId('round-1');
      },
    },
    clock: { now: () => instant(5000) },
    identities: { next: () => `id-${++named}` },
    turns: createRecordTurns(),
  });
  const records = await memory.store.pan(pan);
  if (records.kind === 'trouble') throw new Error(records.trouble);
  const open: OpenPan = {
    id: pan,
    records: records.value,
    current: currentPan(records.value),
    rounds: [],
    openRound: null,
    readings: [],
    base: null,
    sinceBase: [],
    outside: [],
    photo: null,
  };
  model.open(pan);
  return { model, memory, begun, open };
}

describe('a knock check', () => {
  it('keeps what was seen with its photos as valid records, and begins the soft round on the side that was hit', async () => {
    const { model, memory, begun, open } = await made();
    for (const look of lookKinds) model.answer(look, look === 'rim' ? 'yes' : 'no');
    model.photo('rim', new Uint8Array([1, 2, 3]));
    model.photo('stand', new Uint8Array([4]));
    model.photo('stand', null);
    model.change({
      impact: { kind: 'point', drum: 0, clock: 12, radius: 1 },
      remarks: ' fell off the van ',
    });
    expect(model.beginRound(open)).toBe('round-1');
    await settle();
    const [check] = memory.ofKind('knock-check');
    expect(check).toMatchObject({ pan, round: 'round-1', remarks: 'fell off the van' });
    expect(restoreRecord(check)).toEqual({ kind: 'restored', record: check, repairs: [] });
    const [photo] = memory.attachments;
    expect(memory.attachments).toHaveLength(1);
    expect(photo && restoreAttachment(photo)).toMatchObject({ kind: 'restored', repairs: [] });
    expect(check?.looks.find(({ look }) => look === 'rim')).toEqual({
      look: 'rim',
      answer: 'yes',
      photo: photo?.id,
    });
    expect(photo && (await model.photoOf(photo.id))).toEqual(new Uint8Array([1, 2, 3]));
    expect(await model.photoOf(attachmentId('none'))).toBeNull();
    // F♯4 lies at 12 o'clock of a lead in fourths and fifths.
    expect(begun[0]?.order?.[0]).toBe(66);
    expect(begun[0]).toMatchObject({
      way: 'guided',
      conditions: { standing: 'settled' },
      mayBeChoked: true,
    });
    expect(begun[0]?.order).toHaveLength(lowCLead.drums[0]?.notes.length ?? 0);
  });

  it('without a round keeps the same, and the next check begins with nothing answered', async () => {
    const { model, memory } = await made();
    model.answer('crack', 'yes');
    await model.keep();
    expect(memory.ofKind('knock-check')).toMatchObject([
      { round: null, looks: [{ look: 'crack', answer: 'yes', photo: null }], impact: null },
    ]);
    model.open(pan);
    expect(model.draft.value?.answers.size).toBe(0);
  });

  it('is not mixed up with that of another pan', async () => {
    const { model, begun, open } = await made();
    model.answer('crack', 'yes');
    model.open(panId('pan-2'));
    expect(model.draft.value?.answers.size).toBe(0);
    expect(model.beginRound(open)).toBeNull();
    expect(begun).toEqual([]);
  });
});

describe('a stopgap', () => {
  it('is kept when it is put on, and when it is taken off', async () => {
    const { model, memory } = await made();
    await model.logStopgap(pan, midiNote(72), 'magnet');
    await model.logStopgap(pan, midiNote(72), 'none');
    expect(memory.ofKind('stopgap').map(({ note, stopgap }) => [note, stopgap])).toEqual([
      [72, 'magnet'],
      [72, 'none'],
    ]);
  });
});
