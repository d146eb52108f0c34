// What is typed about a pan while the pan itself may change, in another window or by an answer on the same screen.
import { useState } from 'preact/hooks';
import type { PanFields } from '../../../domain/records/rack-records';
import type { PanHistory } from '../../../domain/records/standing/current-pan';
import { draftAfter, draftOf, isTyped, type PanDraft } from '../../../state/pan/pan-draft';
import type { OpenPan } from '../../../state/pan/pan-model';

export interface FollowingDraft {
  readonly draft: PanDraft;
  readonly setDraft: (draft: PanDraft) => void;
  /** The records that were known when the first of what is typed now was typed. */
  readonly known: PanHistory;
}

/** A draft in which what was typed stays, and the rest follows the pan. `isBegun`: something else was changed. */
export function usePanDraft(pan: OpenPan, isBegun: boolean): FollowingDraft {
  const { fields } = pan.current;
  const [typed, setTyped] = useState<Typed>({
    draft: draftOf(fields),
    from: fields,
    known: pan.records,
  });
  const { draft, from, known } = typed;
  if (from !== fields) {
    const isOpen = isBegun || isTyped(draft, from);
    const next = draftAfter(draft, from, fields);
    setTyped({ draft: next, from: fields, known: isOpen ? known : pan.records });
  }
  return { draft, setDraft: (next) => setTyped({ ...typed, draft: next }), known };
}

interface Typed {
  readonly draft: PanDraft;
  /** The fields that `draft` follows where nothing was typed. */
  readonly from: PanFields;
  readonly known: PanHistory;
}
