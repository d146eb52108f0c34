// `npm run phone`: the built app over HTTPS on the local network, because a phone gives no microphone to plain http.
import { networkInterfaces } from 'node:os';
import { join } from 'node:path';
import { installPackages, projectFolder, runScript, say } from './run-tool.mjs';
import { createStaticServer, listenOn } from './static-server.mjs';

const failed = (await installPackages()) || (await runScript('vite/bin/vite.js', ['build']));
if (failed) process.exit(failed);

const addresses = Object.values(networkInterfaces())
  .flatMap((entries) => entries ?? [])
  .filter((entry) => entry.family === 'IPv4' && !entry.internal)
  .map((entry) => entry.address);

const { generate } = await import('selfsigned');
const certificate = await generate([{ name: 'commonName', value: 'Ringwright on this network' }], {
  algorithm: 'sha256',
  keySize: 2048,
  extensions: [
    {
      name: 'subjectAltName',
      altNames: [
        { type: 2, value: 'localhost' },
        ...addresses.map((ip) => ({ type: /** @type {const} */ (7), ip })),
      ],
    },
  ],
});

const server = createStaticServer({
  directory: join(projectFolder, 'dist'),
  tls: { key: certificate.private, cert: certificate.cert },
});
const port = await listenOn(server, Number(process.env['PORT'] ?? 4443), '0.0.0.0');

say('\nOpen one of these on a phone in the same network (Ctrl+C ends it):');
for (const address of addresses) say(`  https://${address}:${port}/`);
if (addresses.length === 0) {
  say('  (no network found: connect this computer to the same Wi-Fi and start again)');
  say(`  On this computer: https://localhost:${port}/`);
}
say('The phone will warn about the certificate, because this computer made it itself just now.');
say('Choose "Advanced" or "Show details", then go on to the page. Your sound stays on the phone.');
say('With such a certificate a phone will not keep the app for offline use: host dist/ for that.');
