// The steps of a walk. Each begins on the first screen and says what it has found, where there is something to say.
import { readdirSync } from 'node:fs';
import { join } from 'node:path';
import { runToEnd } from './own-process';
import { roundNotes, roundTruth } from './round-notes';
import { readoutSeen, resultSeen, roundSeen, seen, versionSeen } from './seen';
import type { Planted } from './strike-files';
import { versions } from './two-versions';
import type { Walk } from './walk';

export interface Found {
  /** Cents of the note that every engine listens to. */
  readonly cents?: Planted;
}

export interface WalkStep {
  readonly name: string;
  run(walk: Walk): Promise<Found | undefined>;
}

/** Agreeing strikes of the note that all engines listen to: enough for one that a busy machine spoiled not to matter. */
const listenedStrikes = 6;
/** Strikes that may be lost before a walk gives up: a busy machine loses sound, and the app asks again. */
const spareStrikes = 12;
/** How long (ms) a strike may take to be measured before it counts as lost. */
const strikeLimit = 4000;

export const walkSteps: readonly WalkStep[] = [
  { name: 'first start', run: firstStart },
  { name: 'start without the server', run: offlineStart },
  { name: 'listening', run: listening },
  { name: 'practice', run: practice },
  { name: 'a round of six notes, kept over a restart', run: round },
  { name: 'sheet to print', run: sheet },
  { name: 'backup out and in', run: backup },
  { name: 'update', run: update },
];

async function firstStart(walk: Walk): Promise<undefined> {
  await walk.start();
  await walk.sees(seen.ready);
}

async function offlineStart(walk: Walk): Promise<undefined> {
  await walk.close();
  await walk.setup.host.stop();
  try {
    if (await answers(walk.setup.host.address)) throw new Error('the server still answers');
    await walk.start();
    await walk.sees(seen.ready);
    await walk.tap(seen.practice);
    await walk.sees(seen.practiceNote);
  } finally {
    await walk.setup.host.serve(walk.setup.builds.first);
  }
}

const answers = (address: string): Promise<boolean> =>
  fetch(address).then(
    () => true,
    () => false,
  );

async function listening(walk: Walk): Promise<Found> {
  await walk.tap(seen.listen);
  await walk.sees(seen.listening);
  for (let strike = 0; ; strike++) {
    await walk.keepListening();
    await walk.strikeListenedNote();
    const readout = await walk.read(readoutSeen);
    if (readout?.state === 'settled' && readout.strikes >= listenedStrikes) {
      const { fundamental, octave, third } = readout;
      return {
        cents: { fundamental: Number(fundamental), octave: Number(octave), third: Number(third) },
      };
    }
    if (strike === listenedStrikes + spareStrikes)
      throw new Error(`not settled: ${JSON.stringify(readout)}`);
  }
}

async function practice(walk: Walk): Promise<undefined> {
  await walk.tap(seen.practice);
  await walk.tap(seen.practiceNote);
  await walk.until('a verdict on the practice pan', async () => {
    const readout = await walk.read(readoutSeen);
    return readout?.note === seen.practiceNoteName && readout.verdict !== '';
  });
}

async function round(walk: Walk): Promise<undefined> {
  await walk.tap(seen.addPan);
  await walk.tap(seen.takeLayout);
  await walk.type(seen.panName, seen.panTitle);
  await walk.tap(seen.keepPan);
  await walk.tap(seen.startRound);
  await walk.tap(seen.beginRound);
  await walk.sees(seen.listening);
  const struck = await strikeSixNotes(walk);
  await walk.sees(seen.heard(roundNotes));

  await walk.start();
  await walk.tap(seen.pan);
  await walk.tap(seen.goOnWithRound);
  await walk.sees(seen.heard(roundNotes));
  await walk.tap(seen.goOnListening);
  await walk.tap(seen.finishRound);
  const result = await walk.until('the result', async () => {
    const rows = await walk.read(resultSeen);
    return rows.length >= roundNotes && rows;
  });
  for (const [k, note] of struck.entries()) {
    const off = Math.abs(
      (result.find((row) => row.note === note)?.cents ?? Number.NaN) - roundTruth(k).fundamental,
    );
    if (!(off < 0.5)) throw new Error(`note ${note} is kept ${off} cents off what was struck`);
  }
}

/** Strikes what the round asks for until six notes are done; resolves to them. */
async function strikeSixNotes(walk: Walk): Promise<readonly number[]> {
  const struck: number[] = [];
  for (let spare = spareStrikes; spare > 0; ) {
    const before = await walk.until('the round', () => walk.read(roundSeen));
    if (before.done >= roundNotes) return struck;
    if (struck.at(-1) !== before.next) struck.push(before.next);
    await walk.keepListening();
    const strikesBefore = (await walk.read(readoutSeen))?.strikes ?? 0;
    await walk.strike(before.next, roundTruth(struck.length - 1));
    const counts = walk.until(
      'the strike to count',
      async () => {
        const after = await walk.read(roundSeen);
        const strikes = (await walk.read(readoutSeen))?.strikes ?? 0;
        return after?.done !== before.done || strikes > strikesBefore;
      },
      strikeLimit,
    );
    await counts.catch(() => {
      spare -= 1;
    });
  }
  throw new Error(
    `${spareStrikes} strikes were not heard: ${JSON.stringify(await walk.read(readoutSeen))}`,
  );
}

async function sheet(walk: Walk): Promise<undefined> {
  await walk.tap(seen.pan);
  await walk.tap(seen.sheet);
  await walk.tap(seen.print);
  const pdf = await walk.until('the printed sheet', () => walk.browser.printed());
  const text = await runToEnd('pdftotext', ['-layout', pdf, '-'], {}, 20_000);
  if (!text.includes(seen.panTitle))
    throw new Error(`the pan is not on paper: ${text.slice(0, 200)}`);
  if (text.includes(seen.print.name)) throw new Error('the buttons are on paper');
}

async function backup(walk: Walk): Promise<undefined> {
  await walk.tap(seen.backUp);
  await walk.tap(seen.makeFile);
  await walk.tap(seen.saveFile);
  const name = await walk.until('the backup among the downloads', async () =>
    readdirSync(walk.outbox).find((each) => /^ringwright-rack-.*\.json\.gz$/.test(each)),
  );
  await walk.start('other-phone');
  await walk.tap(seen.backUp);
  await walk.tap(seen.takeFileIn);
  await walk.choose(seen.chooseFile, join(walk.outbox, name));
  await walk.sees(seen.inFile(roundNotes));
  await walk.tap(seen.takeOver);
  await walk.sees(seen.takenOver);
  await walk.tap(seen.rack);
  await walk.sees(seen.pan);
  await walk.start();
}

async function update(walk: Walk): Promise<undefined> {
  if ((await walk.read(versionSeen)) !== versions.first) throw new Error('not the first version');
  await walk.setup.host.serve(walk.setup.builds.next);
  await walk.start();
  await walk.sees(seen.update);
  if ((await walk.read(versionSeen)) !== versions.first) throw new Error('taken without a tap');
  await walk.tap(seen.update);
  await walk.until(
    'the next version',
    async () => (await walk.read(versionSeen)) === versions.next,
  );
  await walk.sees(seen.ready);
  await walk.sees(seen.pan);
}
