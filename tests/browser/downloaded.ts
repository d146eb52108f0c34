// What the page has handed out as a download.
import type { Download } from 'playwright-core';

/** Its bytes. The file itself may lie in the temporary folder of another process. */
export async function downloaded(download: Download): Promise<Buffer> {
  const parts: Buffer[] = [];
  for await (const part of await download.createReadStream()) parts.push(Buffer.from(part));
  return Buffer.concat(parts);
}
