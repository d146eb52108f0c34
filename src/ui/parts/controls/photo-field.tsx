// The photo of a pan: shown, chosen or taken, removed.
import { useEffect, useState } from 'preact/hooks';
import type { Photos } from '../../../domain/ports/pan-store';
import { panWords } from '../../words/pan-words';

/** The photo's bytes as a picture; its address in memory is given back when it goes. */
export function PhotoPicture({
  bytes,
  name,
}: {
  readonly bytes: Uint8Array<ArrayBuffer>;
  readonly name: string;
}) {
  const [address, setAddress] = useState<string | null>(null);
  useEffect(() => {
    const made = URL.createObjectURL(new Blob([bytes], { type: 'image/jpeg' }));
    setAddress(made);
    return () => URL.revokeObjectURL(made);
  }, [bytes]);
  return address && <img class="photo" src={address} alt={panWords.photoAlt(name)} />;
}

export function PhotoField({
  photos,
  bytes,
  name,
  onChange,
}: {
  readonly photos: Photos;
  readonly bytes: Uint8Array<ArrayBuffer> | null;
  readonly name: string;
  readonly onChange: (bytes: Uint8Array<ArrayBuffer> | null) => void;
}) {
  const [isBad, setIsBad] = useState(false);
  return (
    <div class="field">
      {bytes && <PhotoPicture bytes={bytes} name={name} />}
      <div class="pair">
        <label class="button file">
          {bytes ? panWords.newPhoto : panWords.takePhoto}
          <input
            type="file"
            accept="image/*"
            onChange={(event) => {
              const file = event.currentTarget.files?.[0];
              event.currentTarget.value = '';
              if (!file) return;
              void photos.scaled(file).then((scaled) => {
                setIsBad(scaled === null);
                if (scaled) onChange(scaled);
              });
            }}
          />
        </label>
        {bytes && (
          <button type="button" onClick={() => onChange(null)}>
            {panWords.noPhoto}
          </button>
        )}
      </div>
      {isBad && (
        <p class="hint warn" role="alert">
          {panWords.photoBad}
        </p>
      )}
    </div>
  );
}
