// `npm start`: installs what is missing, builds, serves the build on this machine and prints the address.
import { join } from 'node:path';
import { installPackages, projectFolder, runScript, say } from './run-tool.mjs';
import { createStaticServer, listenOn } from './static-server.mjs';

const failed = (await installPackages()) || (await runScript('vite/bin/vite.js', ['build']));
if (failed) process.exit(failed);

const server = createStaticServer({ directory: join(projectFolder, 'dist') });
const port = await listenOn(server, Number(process.env['PORT'] ?? 4173), 'localhost');
say(`\nRingwright is served on http://localhost:${port}/  (Ctrl+C ends it)`);
