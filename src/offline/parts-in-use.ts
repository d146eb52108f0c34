// What this very page was made of, so that it can be compared with a version.

/** Paths of its scripts and styles, below the folder of the app. */
export function partsInUse(): readonly string[] {
  const folder = new URL('.', document.baseURI).href;
  return [
    ...Array.from(document.scripts, ({ src }) => src),
    ...Array.from(
      document.querySelectorAll<HTMLLinkElement>('link[rel="stylesheet"]'),
      ({ href }) => href,
    ),
  ]
    .filter((address) => address.startsWith(folder))
    .map((address) => new URL(address).pathname.slice(new URL(folder).pathname.length));
}
