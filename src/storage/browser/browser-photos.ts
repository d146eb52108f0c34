// Scales photos down on the phone: a pan is recognised from far fewer pixels than a camera gives.
import type { Photos } from '../../domain/ports/pan-store';

/** Pixels, and the quality of the JPEG, 0…1 (chosen, no source). */
const longestSide = 960;
const quality = 0.8;

export class BrowserPhotos implements Photos {
  async scaled(file: {
    arrayBuffer(): Promise<ArrayBuffer>;
  }): Promise<Uint8Array<ArrayBuffer> | null> {
    try {
      const picture = await createImageBitmap(new Blob([await file.arrayBuffer()]));
      try {
        const scale = Math.min(1, longestSide / Math.max(picture.width, picture.height));
        const canvas = document.createElement('canvas');
        canvas.width = Math.max(1, Math.round(scale * picture.width));
        canvas.height = Math.max(1, Math.round(scale * picture.height));
        canvas.getContext('2d')?.drawImage(picture, 0, 0, canvas.width, canvas.height);
        const blob = await new Promise<Blob | null>((done) => {
          canvas.toBlob(done, 'image/jpeg', quality);
        });
        return blob && new Uint8Array(await blob.arrayBuffer());
      } finally {
        picture.close();
      }
    } catch {
      // Not a picture, or one that this browser cannot decode: the form says so.
      return null;
    }
  }
}
