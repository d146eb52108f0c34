import { describe, expect, it } from 'vitest';
import {
  changesOf,
  checkDraft,
  draftAfter,
  draftOf,
  isTyped,
} from '../../../src/state/pan/pan-draft';
import { panFieldsSample } from '../../domain/records/pan-fields-sample';

const fields = panFieldsSample({ owner: 'Ada' });

describe('the form of a pan', () => {
  it('keeps what was typed and follows the rest when the pan changes meanwhile', () => {
    const typed = { ...draftOf(fields), owner: 'Bea' };
    expect(isTyped(typed, fields)).toBe(true);
    const elsewhere = { ...fields, owner: 'Cyd', maker: 'the yard' };
    expect(draftAfter(typed, fields, elsewhere)).toEqual({
      ...draftOf(fields),
      owner: 'Bea',
      maker: 'the yard',
    });
  });

  it('writes only what was typed', () => {
    const checked = checkDraft({ ...draftOf(fields), owner: ' Bea ', a4: '441,5' });
    if (checked.kind !== 'good') throw new Error('it is good');
    expect(changesOf(fields, checked.fields)).toEqual({ owner: 'Bea', a4: 441.5 });
  });

  it('says what is wrong with a name of blanks and an A4 that no band has', () => {
    expect(checkDraft({ ...draftOf(fields), name: '  ', a4: '900' })).toEqual({
      kind: 'faulty',
      faults: ['name', 'a4'],
    });
  });
});
