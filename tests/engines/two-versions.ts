// The app twice, as two versions that say which one they are.

import { join } from 'node:path';
import { build } from 'vite';
import { distFolder } from '../build/built-files';

export const versions = { first: 'first', next: 'next' } as const;

/** Builds the app into `folder`, as a host would serve it. */
export async function buildVersion(version: string, folder: string): Promise<void> {
  // Whoever has loaded this through Vite is in development, where the app keeps no offline copy.
  process.env['NODE_ENV'] = 'production';
  await build({
    root: join(distFolder, '..'),
    logLevel: 'error',
    build: { outDir: folder, emptyOutDir: true },
    plugins: [
      {
        name: 'say-version',
        transform: (code, id) =>
          /src.main\.tsx$/.test(id)
            ? `${code}\ndocument.documentElement.dataset.version = ${JSON.stringify(version)};`
            : null,
      },
    ],
  });
}
