// What a phone is told about the app as one to be installed: the build writes it as manifest.webmanifest.

const paper = '#17130f';

/** @type {Partial<import('vite-plugin-pwa').ManifestOptions>} */
export const webManifest = {
  // Fixed for ever: another id is another app to the phone.
  id: '/ringwright',
  name: 'Ringwright',
  short_name: 'Ringwright',
  description: 'Hears a strike on a steelpan and says which partial is flat or sharp.',
  lang: 'en',
  start_url: './',
  scope: './',
  display: 'standalone',
  theme_color: paper,
  background_color: paper,
  icons: [
    { src: 'icon-192.png', sizes: '192x192', type: 'image/png', purpose: 'any' },
    { src: 'icon-512.png', sizes: '512x512', type: 'image/png', purpose: 'any' },
    { src: 'icon-maskable-512.png', sizes: '512x512', type: 'image/png', purpose: 'maskable' },
  ],
  // As src/offline/waiting-place.ts has it; a test of the build compares the two.
  // Files of this app come as text, as JSON and packed, by whatever name the sending program has for that.
  share_target: {
    action: './receive-shared',
    method: 'POST',
    enctype: 'multipart/form-data',
    params: {
      files: [
        {
          name: 'file',
          accept: [
            'text/plain',
            'application/json',
            'application/gzip',
            'application/x-gzip',
            '.txt',
            '.json',
            '.gz',
          ],
        },
      ],
    },
  },
  // Computers only; phones have the share sheet. No launch_handler: with focus-existing, Chromium throws away
  // what is shared (WICG/web-app-launch, issue 62).
  file_handlers: [
    {
      action: './#/receive',
      accept: { 'application/json': ['.json'], 'application/gzip': ['.gz'] },
    },
  ],
  shortcuts: [{ name: 'Listen', url: './#/listen' }],
};
