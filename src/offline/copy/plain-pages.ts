// Pages for the moment when the app itself cannot start. They need no script, no style and no other file.

const page = (text: string): Response =>
  new Response(
    `<!doctype html>
<html lang="en">
<meta charset="utf-8">
<meta name="viewport" content="width=device-width, initial-scale=1">
<title>Ringwright</title>
<h1>Ringwright</h1>
${text}
`,
    {
      headers: {
        'Content-Type': 'text/html; charset=utf-8',
        'Content-Security-Policy': "default-src 'none'; frame-ancestors 'none'",
        'X-Frame-Options': 'DENY',
        'Cache-Control': 'no-store',
      },
    },
  );

const kept =
  '<p>Your pans and readings are still on this phone. Do not clear the data of this app.</p>';

/** Instead of the start page, when that is wrong or gone and the network has none. */
export const brokenPage = (): Response =>
  page(`<p>The copy of this app on the phone is broken, and this network does not have a good one.</p>
${kept}
<p>With another network: <a href="./?mend">fetch it again</a>.</p>`);

/** After the whole copy was looked at. `missing` is how many files could not be had. */
export const mendedPage = (mended: number, missing: number): Response =>
  missing > 0
    ? page(`<p>${count(missing)} of the app’s copy on this phone could not be fetched from this network.</p>
${kept}
<p>With another network: <a href="./?mend">try again</a>. Or <a href="./">open the app as it is</a>.</p>`)
    : page(`<p>${mended > 0 ? `${count(mended)} of the app’s copy on this phone was broken and is right again.` : 'The app’s copy on this phone is whole.'}</p>
<p><a href="./">Open the app</a></p>`);

const count = (files: number): string => (files === 1 ? '1 file' : `${files} files`);
