// A file that means harm though each line of it is good: a million readings of one pan.
import { gzipSync } from 'node:zlib';
import { seededRandom } from '../../../../src/practice-pan/seeded-random';
import { sampleReading, sampleRound } from '../../../storage/rack/rack-sample';
import { signed } from './backup-sample';

const head =
  '{"format":"ringwright-rack","version":1,"made":0,"app":"0.1.0","pans":1,"records":[\n';
const members = 20;
const linesOfMember = 1e6 / members;

/**
 * The file, packed. Its numbers are as random as those of true readings, so that it grows no more in unpacking than a
 * backup does. Gzip members one after the other are one file (RFC 1952, 2.2): the same lines come again and again.
 */
export function millionReadings(): Buffer<ArrayBuffer> {
  const random = seededRandom(7);
  const round = sampleRound('round-1');
  const [strike] = sampleReading('reading-0', round, 60).strikes;
  if (!strike) throw new Error('no strike');
  const text = JSON.stringify({ ...sampleReading('reading-@', round, 60), strikes: [strike] });
  const hz = JSON.stringify(strike.fundamental.hz);
  const lines = Array.from({ length: linesOfMember }, (_, k) =>
    signed(
      text.replace('reading-@', `reading-${k}-${random()}`).replace(hz, String(200 + random())),
    ),
  );
  const member = gzipSync(`${lines.join(',\n')},\n`, { level: 1 });
  return Buffer.concat([gzipSync(head), ...Array<Buffer>(members).fill(member)]);
}
