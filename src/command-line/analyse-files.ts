// The analysis of WAV files in Node: parameters in, one line of JSON per file out.
import { readFile } from 'node:fs/promises';
import { resolve } from 'node:path';
import { parseArgs } from 'node:util';
import type { ListeningContext } from '../domain/measurement/strike';
import type { PanLayout } from '../domain/pans/layout';
import { notesOf } from '../domain/pans/layout';
import { lowCLead } from '../domain/pans/layouts/low-c-lead';
import { highestA4, lowestA4, standardA4 } from '../domain/tuning/equal-temperament';
import { parseNote } from '../domain/tuning/note-names';
import { hertz } from '../domain/tuning/units';
import { readWav } from '../dsp/read-wav';
import { StrikeListener } from '../dsp/strike-listener';
import { describeHeard } from './describe-heard';

const knownPans: readonly PanLayout[] = [lowCLead];

export interface AnalyseSurroundings {
  /** Folder that relative file names start from. */
  readonly folder: string;
  readonly out: (line: string) => void;
  readonly complain: (line: string) => void;
}

const options = {
  note: { type: 'string' },
  pan: { type: 'string' },
  a4: { type: 'string' },
  help: { type: 'boolean', short: 'h' },
} as const;

const help: readonly string[] = [
  'npm run --silent analyse -- FILE... [options]',
  'Writes one line of JSON for each WAV file: its strikes with their partials.',
  '  --note NAME  the note that was struck, such as D5 or F#4',
  `  --pan ID     only the notes of this pan: ${knownPans.map(({ id }) => id).join(', ')}`,
  `  --a4 HZ      what the cents are against, from ${lowestA4} to ${highestA4} (${standardA4} unless given)`,
  '  --help       this text',
];

type Parameters =
  | { readonly kind: 'ok'; readonly files: readonly string[]; readonly context: ListeningContext }
  | { readonly kind: 'help' }
  | { readonly kind: 'wrong'; readonly why: string };

/** Analyses the files named by `words`; resolves to the exit code: 0, or 2 if anything was wrong with a parameter or file. */
export async function analyseFiles(
  words: readonly string[],
  surroundings: AnalyseSurroundings,
): Promise<0 | 2> {
  const parameters = readParameters(words);
  if (parameters.kind === 'wrong') {
    surroundings.complain(parameters.why);
    return 2;
  }
  if (parameters.kind === 'help') {
    for (const line of help) surroundings.out(line);
    return 0;
  }
  let exitCode: 0 | 2 = 0;
  for (const file of parameters.files) {
    const bytes = await readBytes(resolve(surroundings.folder, file));
    if (typeof bytes === 'string') {
      surroundings.complain(`${file}: ${bytes}`);
      exitCode = 2;
      continue;
    }
    const wav = readWav(bytes);
    if (wav.kind === 'not-wav') {
      surroundings.complain(`${file}: no readable WAV file (${wav.why})`);
      exitCode = 2;
      continue;
    }
    const listener = new StrikeListener(wav.sampleRate, parameters.context);
    const heard = [...listener.push(wav.samples), ...listener.finish()];
    const strikes = describeHeard(heard);
    surroundings.out(JSON.stringify({ file, sampleRate: wav.sampleRate, strikes }));
  }
  return exitCode;
}

function readParameters(words: readonly string[]): Parameters {
  const wrong = (why: string): Parameters => ({ kind: 'wrong', why });
  let parsed: ReturnType<typeof parseWords>;
  try {
    parsed = parseWords(words);
  } catch (error) {
    const unknown = words.find((word) => word.startsWith('-') && !isKnown(word));
    if (unknown !== undefined) {
      return wrong(`There is no option ${unknown.split('=', 1)[0]}; --help lists those there are.`);
    }
    return wrong(error instanceof Error ? (error.message.split('\n', 1)[0] ?? '') : String(error));
  }
  const { values, positionals: files } = parsed;
  if (values.help) return { kind: 'help' };
  if (files.length === 0) return wrong('Name at least one WAV file.');
  const a4 = values.a4 === undefined ? standardA4 : Number(values.a4);
  if (!(a4 >= lowestA4 && a4 <= highestA4)) {
    return wrong(`--a4 must be a number from ${lowestA4} to ${highestA4}, not "${values.a4}".`);
  }
  const expected = values.note === undefined ? null : parseNote(values.note);
  if (values.note !== undefined && expected === null) {
    return wrong(`--note must be a note such as D5 or F#4, not "${values.note}".`);
  }
  const pan = knownPans.find((layout) => layout.id === values.pan);
  if (values.pan !== undefined && !pan) {
    const ids = knownPans.map((layout) => layout.id).join(', ');
    return wrong(`--pan must be one of: ${ids}; not "${values.pan}".`);
  }
  return {
    kind: 'ok',
    files,
    context: { a4: hertz(a4), expected, notes: pan ? notesOf(pan) : null },
  };
}

const parseWords = (words: readonly string[]) =>
  parseArgs({
    args: [...words],
    allowPositionals: true,
    options,
  });

const isKnown = (word: string): boolean =>
  word === '-h' || Object.keys(options).some((name) => word.split('=', 1)[0] === `--${name}`);

/** The bytes of a file, or why they cannot be had, in words. */
async function readBytes(path: string): Promise<ArrayBuffer | string> {
  try {
    const bytes = await readFile(path);
    return new Uint8Array(bytes).buffer;
  } catch (error) {
    const code = error instanceof Error && 'code' in error ? error.code : null;
    if (code === 'ENOENT') return 'there is no such file';
    if (code === 'EISDIR') return 'this is a folder, not a WAV file';
    return `cannot be read (${error instanceof Error ? error.message : String(error)})`;
  }
}
