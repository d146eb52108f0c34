// The address of a picture in memory; it is given back when the picture goes.
import { useEffect, useState } from 'preact/hooks';

/** Null without a picture, and in the first moment. `bytes` are JPEG. */
export function usePictureAddress(bytes: Uint8Array<ArrayBuffer> | null): string | null {
  const [address, setAddress] = useState<string | null>(null);
  useEffect(() => {
    if (!bytes) {
      setAddress(null);
      return undefined;
    }
    const made = URL.createObjectURL(new Blob([bytes], { type: 'image/jpeg' }));
    setAddress(made);
    return () => URL.revokeObjectURL(made);
  }, [bytes]);
  return address;
}
