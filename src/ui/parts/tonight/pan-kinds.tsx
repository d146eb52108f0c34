// The kinds of pans as pictures: somebody beside the van knows what it looks like, not what it is called.
import { notesOf } from '../../../domain/pans/layout';
import type { BuiltInLayout } from '../../../domain/pans/layouts/built-in-layouts';
import { knockWords } from '../../words/fall/knock-words';
import { PanPicture } from '../drawing/pan-picture';

export const PanKinds = ({
  kinds,
  onChoose,
}: {
  readonly kinds: readonly BuiltInLayout[];
  readonly onChoose: (kind: BuiltInLayout) => void;
}) => (
  <div class="pan-kinds">
    {kinds.map((kind) => (
      <button key={kind.layout.id} type="button" onClick={() => onChoose(kind)}>
        <PanPicture layout={kind.layout} />
        <span>
          {kind.layout.name}
          <span class="aside">
            {knockWords.notes(notesOf(kind.layout).length, kind.layout.drums.length)}
          </span>
        </span>
      </button>
    ))}
  </div>
);
