// What the build says about each file of the app, and what is checked about a file.

/** A file that belongs to this version. */
export interface ListedFile {
  /** Below the folder of the app. */
  readonly path: string;
  /** SHA-256 of its bytes, base64. */
  readonly hash: string;
}

/** SHA-256 of `bytes`, base64, as the build writes it. */
export async function hashOf(bytes: ArrayBuffer): Promise<string> {
  const digest = new Uint8Array(await crypto.subtle.digest('SHA-256', bytes));
  return btoa(String.fromCharCode(...digest));
}

const types: Readonly<Record<string, string>> = {
  css: 'text/css; charset=utf-8',
  html: 'text/html; charset=utf-8',
  js: 'text/javascript; charset=utf-8',
  json: 'application/json; charset=utf-8',
  svg: 'image/svg+xml',
  txt: 'text/plain; charset=utf-8',
  wav: 'audio/wav',
  webmanifest: 'application/manifest+json',
  woff2: 'font/woff2',
};

/** Header of a kept file with the hash that it had when it was kept. */
export const hashHeader = 'X-Content-Hash';

/**
 * The answer that is kept for a file. Nothing of the host's own headers goes in: a host may have sent a wrong type, or
 * `Vary: *`, which no cache takes.
 */
export function keptAnswer({ path, hash }: ListedFile, bytes: ArrayBuffer): Response {
  const ending = path.slice(path.lastIndexOf('.') + 1);
  return new Response(bytes, {
    headers: {
      'Content-Type': types[ending] ?? 'application/octet-stream',
      'Content-Length': String(bytes.byteLength),
      'X-Content-Type-Options': 'nosniff',
      // No other page shows the app inside itself. A policy in the page itself cannot say so (CSP Level 3, 3.3).
      ...(ending === 'html'
        ? { 'Content-Security-Policy': "frame-ancestors 'none'", 'X-Frame-Options': 'DENY' }
        : {}),
      [hashHeader]: hash,
    },
  });
}
