// Sound in pieces of the size in which it comes from the microphone.

/** Two blocks of the microphone (chosen, no source). */
const blockLength = 4096;

/** The samples in order, each piece a copy of its own: it is given away to the ear. */
export function soundBlocks(samples: Float32Array<ArrayBuffer>): Float32Array<ArrayBuffer>[] {
  const blocks: Float32Array<ArrayBuffer>[] = [];
  for (let from = 0; from < samples.length; from += blockLength) {
    blocks.push(samples.slice(from, from + blockLength));
  }
  return blocks;
}
