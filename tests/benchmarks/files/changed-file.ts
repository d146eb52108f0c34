// A backup as somebody changed it: its bytes, its lines, or values in it with all sums made anew.
import { crc32Of } from '../../../src/domain/records/backup/crc-32';
import { digestOf } from '../../../src/domain/records/record-digest';

export type Way = 'bytes' | 'lines' | 'values';

/** A number in [0, 1). */
export type Chance = () => number;

const upTo = (chance: Chance, count: number): number => Math.floor(chance() * count);
const oneOf = <T>(chance: Chance, all: readonly T[]): T => {
  const one = all[upTo(chance, all.length)];
  if (one === undefined) throw new Error('nothing to choose from');
  return one;
};
const times = (chance: Chance, most: number): readonly number[] =>
  Array.from({ length: 1 + upTo(chance, most) }, (_, k) => k);

/** `whole` is the text of a backup; what comes back is another text. */
export function changedFile(whole: string, way: Way, chance: Chance): string {
  switch (way) {
    case 'bytes':
      return times(chance, 4).reduce((text) => changedBytes(text, chance), whole);
    case 'lines':
      return times(chance, 3).reduce((text) => changedLines(text, chance), whole);
    case 'values':
      return changedValues(whole, chance);
  }
}

function changedBytes(text: string, chance: Chance): string {
  const at = upTo(chance, text.length);
  const code = (text.charCodeAt(at) || 0) ^ (1 << upTo(chance, 7));
  const put = oneOf(chance, [String.fromCharCode(code), '', '"', '0', text.slice(at, at + 40)]);
  return text.slice(0, at) + put + text.slice(at + upTo(chance, 3));
}

function changedLines(text: string, chance: Chance): string {
  const lines = text.split('\n');
  const [one, other] = [upTo(chance, lines.length), upTo(chance, lines.length)];
  const [first = '', second = ''] = [lines[one], lines[other]];
  switch (upTo(chance, 4)) {
    case 0:
      return lines.toSpliced(one, 1).join('\n');
    case 1:
      return lines.toSpliced(one, 0, second).join('\n');
    case 2:
      return lines.with(one, second).with(other, first).join('\n');
    default: {
      // The beginning of one line and the end of the other.
      const cut = upTo(chance, first.length);
      return lines.with(one, first.slice(0, cut) + second.slice(cut)).join('\n');
    }
  }
}

type Data = Record<string, unknown>;

/** A file that a forger made: each line with its sum, the last line with that of all, records with a digest or not. */
function changedValues(whole: string, chance: Chance): string {
  const lines = whole.trimEnd().split('\n');
  const records = lines.slice(1, -1).map((line) => line.replace(/,$/, '').slice(12, -1));
  const others = records.map((json) => JSON.parse(json) as Data);
  for (const _ of times(chance, 3)) {
    const k = upTo(chance, records.length);
    const data = changedData(JSON.parse(records[k] ?? '{}') as Data, others, chance);
    const { digest, ...content } = data;
    const sealing = oneOf(chance, ['as it was', 'made anew', 'left out']);
    const made = sealing === 'made anew' ? { digest: digestOf(content) } : {};
    const kept = sealing === 'as it was' && digest !== undefined ? { digest } : {};
    const text = JSON.stringify({ ...content, ...made, ...kept });
    // Instead of the one it was made of, or beside it.
    if (chance() < 0.7) records[k] = text;
    else records.push(text);
  }
  const attachments = records.filter((json) => /"kind":"(photo|sound)"/.test(json)).length;
  const counts = JSON.stringify({ records: records.length - attachments, attachments });
  const body = records.map((json) => `["${crc32Of(json)}",${json}]`).join(',\n');
  const before = `${lines[0]}\n${body}\n`;
  return `${before}],"counts":${counts},"sum":"${crc32Of(before)}"}\n`;
}

/** One field, at some depth, becomes another value: of the same field of another record, or made up. */
function changedData(data: Data, others: readonly Data[], chance: Chance): Data {
  const names = Object.keys(data).filter((name) => name !== 'shape' && name !== 'digest');
  const name = oneOf(chance, names);
  const value = data[name];
  if (typeof value === 'object' && value !== null && chance() < 0.7) {
    if (!Array.isArray(value) && Object.keys(value).length > 0) {
      return { ...data, [name]: changedData(value as Data, others, chance) };
    }
  }
  const same = others.flatMap((other) => (name in other ? [other[name]] : []));
  return {
    ...data,
    [name]: chance() < 0.5 && same.length > 0 ? oneOf(chance, same) : madeUp(value, chance),
  };
}

function madeUp(value: unknown, chance: Chance): unknown {
  if (typeof value === 'number') return oneOf(chance, [value + 1, value * 2, 0, -1, 61, 8e15]);
  if (typeof value === 'boolean') return !value;
  if (typeof value === 'string') return oneOf(chance, [`${value}x`, 'pan-2', 'none', 'mark-1', '']);
  return oneOf<unknown>(chance, [null, [], {}, 'x'.repeat(300), 7]);
}
