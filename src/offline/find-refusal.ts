// Why the browser did not take the service worker's script.

/**
 * `error` is what registering the script at `address` rejected with. `unknown`: there is no network, or
 * it has nothing to do with it. `wrong-answer`: the network gave something, but not the script. `unsupported`: it gave the script, and the browser
 * does not want it all the same, as with a certificate that it does not trust.
 */
export async function findRefusal(
  address: string,
  error: unknown,
): Promise<'unknown' | 'wrong-answer' | 'unsupported'> {
  // The error for a script that cannot be had, is not a script, or is of another type (Service Workers, "Update").
  const isScripts = error instanceof TypeError || isSecurity(error);
  if (!isScripts) return 'unknown';
  try {
    const answer = await fetch(address, { cache: 'no-store' });
    const isScript = /javascript/.test(answer.headers.get('Content-Type') ?? '');
    return answer.ok && isScript && isSecurity(error) ? 'unsupported' : 'wrong-answer';
  } catch {
    return 'unknown';
  }
}

const isSecurity = (error: unknown): boolean =>
  error instanceof DOMException && error.name === 'SecurityError';
