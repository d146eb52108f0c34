// `npm run phone`: what a phone in the same network gets.
import { type ChildProcess, spawn } from 'node:child_process';
import { networkInterfaces } from 'node:os';
import { join } from 'node:path';
import { connect } from 'node:tls';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { openApp } from './open-app';
import { sixStrikes } from './six-strikes';

const project = join(import.meta.dirname, '..', '..');
const sound = sixStrikes();

const inNetwork = Object.values(networkInterfaces())
  .flatMap((entries) => entries ?? [])
  .find(({ family, internal }) => family === 'IPv4' && !internal)?.address;
const host = inNetwork ?? 'localhost';
const where = inNetwork
  ? "this computer's address in the network"
  : 'localhost, because this computer is in no network';

/** Starts the command on any free port; resolves to the address of `host` that it prints. */
async function startPhone(): Promise<{ command: ChildProcess; address: string }> {
  // Vitest's own NODE_ENV would make a development build.
  const { NODE_ENV: _, ...environment } = process.env;
  const command = spawn(process.execPath, [join(project, 'src/command-line/phone.mjs')], {
    env: { ...environment, PORT: '0' },
    stdio: ['ignore', 'pipe', 'pipe'],
  });
  let printed = '';
  return new Promise((done, fail) => {
    const read = (chunk: unknown) => {
      printed += String(chunk);
      const address = /https:\/\/\S+:\d+\/(?=\s)/g;
      const found = printed.match(address)?.find((each) => new URL(each).hostname === host);
      if (found) done({ command, address: found });
    };
    command.stdout.on('data', read);
    command.stderr.on('data', read);
    command.once('exit', () => fail(new Error(`npm run phone ended:\n${printed}`)));
  });
}

/** The names and addresses for which the server's certificate was made. */
const certifiedNames = (address: string): Promise<string> =>
  new Promise((done, fail) => {
    const { hostname, port } = new URL(address);
    const socket = connect({ host: hostname, port: Number(port), rejectUnauthorized: false });
    socket.once('secureConnect', () => {
      done(socket.getPeerCertificate().subjectaltname ?? '');
      socket.destroy();
    });
    socket.once('error', fail);
  });

describe(`npm run phone, opened over HTTPS at ${where}`, () => {
  let command: ChildProcess;
  let address: string;
  beforeAll(async () => {
    ({ command, address } = await startPhone());
  });
  afterAll(() => {
    command.kill();
  });

  it('shows a certificate for this very address', async () => {
    const names = await certifiedNames(address);
    expect(names).toContain('DNS:localhost');
    if (inNetwork) expect(names).toContain(`IP Address:${inNetwork}`);
  });

  it('is a secure page: the microphone listens, a verdict comes, and no offline copy is promised', async () => {
    const app = await openApp('#/', { address, sound });
    try {
      expect(await app.page.evaluate(() => window.isSecureContext)).toBe(true);
      await app.page.getByRole('link', { name: 'Listen' }).click();
      await app.page.locator('#readout[data-state="settled"]').waitFor();
      expect(await app.page.locator('#readout').getAttribute('data-verdict')).toBe('flat');
      await app.page.getByRole('link', { name: 'Back' }).click();
      // Nobody the browser trusts has signed the certificate: then it keeps no copy, and the app promises none.
      await app.page.locator('[data-offline="unsupported"]').waitFor();
      const expected = /SSL certificate error occurred when fetching the script/;
      expect(app.problems.filter((problem) => !expected.test(problem))).toEqual([]);
    } finally {
      await app.close();
    }
  });
});
