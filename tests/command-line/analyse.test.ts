import { spawnSync } from 'node:child_process';
import { mkdtempSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { afterAll, expect, test } from 'vitest';
import { analyseFiles } from '../../src/command-line/analyse-files';
import type { DescribedStrike } from '../../src/command-line/describe-heard';
import { floatWav } from '../synthetic-sounds/float-wav';
import { leadNote, placed, woodenKnock } from '../synthetic-sounds/sounds';

const folder = mkdtempSync(join(tmpdir(), 'ringwright-analyse-'));
afterAll(() => rmSync(folder, { recursive: true }));

const sampleRate = 48_000;
/** D5 at A4 = 440 Hz: 440 · 2^(5/12). */
const d5 = 440 * 2 ** (5 / 12);

function write(name: string, bytes: Uint8Array): string {
  const path = join(folder, name);
  writeFileSync(path, bytes);
  return path;
}

const flatNote = () =>
  leadNote({ target: d5, fundamental: -9, octave: -5, third: 3, thirdTimes: 4 }, sampleRate);

function analyse(...words: string[]) {
  const script = join(import.meta.dirname, '../../src/command-line/analyse.mjs');
  const { stdout, stderr, status } = spawnSync(process.execPath, [script, ...words], {
    cwd: folder,
    // npm tells where the person stood; here that is the folder with the sounds.
    env: { ...process.env, INIT_CWD: folder },
    encoding: 'utf8',
  });
  const results: { file: string; sampleRate: number; strikes: DescribedStrike[] }[] = stdout
    .split('\n')
    .filter((line) => line !== '')
    .map((line) => JSON.parse(line));
  return { results, complaints: stderr.split('\n').filter((line) => line !== ''), status };
}

test('a flat D5 is told with each partial by itself, a knock as a knock, one line for the file', () => {
  const sound = placed(
    [
      { at: 0.7, samples: flatNote() },
      { at: 3, samples: woodenKnock(sampleRate) },
    ],
    { sampleRate, seconds: 4.5 },
  );
  const file = write('d5.wav', floatWav(sound, sampleRate));
  const { results, complaints, status } = analyse(file);
  expect(complaints).toEqual([]);
  expect(status).toBe(0);
  expect(results).toHaveLength(1);
  expect(results[0]).toMatchObject({ file, sampleRate });
  const [strike, knock] = results[0]?.strikes ?? [];
  expect(results[0]?.strikes).toHaveLength(2);
  expect(knock).toMatchObject({ kind: 'knock', fundamental: null });
  expect(strike).toMatchObject({ kind: 'strike', reason: null, note: 'D5' });
  expect(strike?.at).toBeCloseTo(0.7, 1);
  expect(strike?.fundamental?.cents).toBeCloseTo(-9, 0);
  expect(strike?.octave?.centsFromOwn).toBeCloseTo(-5, 0);
  expect(strike?.octave?.cents).toBeCloseTo(-14, 0);
  expect(strike?.third?.kind).toBe('double-octave');
  expect(strike?.third?.centsFromOwn).toBeCloseTo(3, 0);
  expect(Object.keys(strike ?? {})).toEqual([
    'at',
    'kind',
    'reason',
    'note',
    'fundamental',
    'fundamentalRival',
    'octave',
    'octaveRival',
    'third',
    'thirdRival',
    'glideCents',
    'alsoRinging',
  ]);
});

test("the band's own A4 moves the cents", () => {
  const sound = placed([{ at: 0.7, samples: flatNote() }], { sampleRate, seconds: 3 });
  write('band.wav', floatWav(sound, sampleRate));
  // A442 = +7.851 cents (equal temperament, 1200·log2(442/440)).
  const { results } = analyse('band.wav', '--a4', '442', '--pan', 'low-c-lead', '--note', 'D5');
  expect(results[0]?.strikes[0]?.fundamental?.cents).toBeCloseTo(-9 - 7.851, 0);
});

test('unreadable files are named in one line each, the others are still analysed', () => {
  write('not.wav', new TextEncoder().encode('this is text'));
  write('empty.wav', new Uint8Array());
  write('quiet.wav', floatWav(placed([], { sampleRate, seconds: 1 }), sampleRate));
  const { results, complaints, status } = analyse('not.wav', 'none.wav', 'quiet.wav', 'empty.wav');
  expect(status).toBe(2);
  expect(results).toEqual([{ file: 'quiet.wav', sampleRate, strikes: [] }]);
  expect(complaints).toHaveLength(3);
  expect(complaints[0]).toMatch(/^not\.wav: /);
  expect(complaints[1]).toBe('none.wav: there is no such file');
  expect(complaints[2]).toMatch(/^empty\.wav: /);
});

test.each([
  [['quiet.wav', '--a4', '399'], '--a4'],
  [['quiet.wav', '--a4', '481'], '--a4'],
  [['quiet.wav', '--a4', 'high'], '--a4'],
  [['quiet.wav', '--note', 'H5'], '--note'],
  [['quiet.wav', '--pan', 'kettle'], '--pan'],
  [['quiet.wav', '--loud'], '--loud'],
  [[], 'WAV'],
])('%j is refused in one clear line', async (words, named) => {
  const results: string[] = [];
  const complaints: string[] = [];
  const exitCode = await analyseFiles(words, {
    folder,
    out: (line) => results.push(line),
    complain: (line) => complaints.push(line),
  });
  expect(exitCode).toBe(2);
  expect(results).toEqual([]);
  expect(complaints).toHaveLength(1);
  expect(complaints[0]).toContain(named);
});

test('--help says what there is, and an unknown option gets one line', async () => {
  const run = async (...words: string[]) => {
    const out: string[] = [];
    const complaints: string[] = [];
    const code = await analyseFiles(words, {
      folder,
      out: (line) => out.push(line),
      complain: (line) => complaints.push(line),
    });
    return { out, complaints, code };
  };
  const help = await run('--help');
  expect(help.code).toBe(0);
  expect(help.complaints).toEqual([]);
  for (const option of ['--note', '--pan', '--a4', '--help']) {
    expect(help.out.join('\n')).toContain(option);
  }
  expect(await run('--loud', 'a.wav')).toEqual({
    out: [],
    complaints: ['There is no option --loud; --help lists those there are.'],
    code: 2,
  });
});
