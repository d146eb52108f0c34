import { isValidElement, type VNode } from 'preact';
import { describe, expect, it } from 'vitest';
import {
  longestOfKnock,
  longestOfPan,
  longestOfVisit,
} from '../../../../src/domain/records/longest-texts';
import { restoreRecord } from '../../../../src/domain/records/restore/restore-record';
import { emptyDraft } from '../../../../src/state/pan/pan-draft';
import { TextField } from '../../../../src/ui/parts/controls/form-fields';
import { PanForm } from '../../../../src/ui/parts/pan/pan-form';

/** All elements in what a component returned. */
function elementsIn(node: unknown): readonly VNode<Record<string, unknown>>[] {
  if (Array.isArray(node)) return node.flatMap(elementsIn);
  if (!isValidElement(node)) return [];
  const element = node as VNode<Record<string, unknown>>;
  return [element, ...elementsIn(element.props.children)];
}

const head = { shape: 1, id: 'record-1', pan: 'pan-1', at: 0 };
const textOf = (length: number) => 'x'.repeat(length);
const texts = (longest: Readonly<Record<string, number>>) =>
  Object.fromEntries(Object.entries(longest).map(([name, length]) => [name, textOf(length)]));

describe('a text field', () => {
  it('takes as many characters as it is told, in one line or in several', () => {
    for (const long of [false, true]) {
      const shown = TextField({ id: 'a', label: 'A', value: '', longest: 80, long, onInput() {} });
      const taking = elementsIn(shown).flatMap(({ props }) => props['maxLength'] ?? []);
      expect(taking).toEqual([80]);
    }
  });

  it('of the form about a pan takes what the record can hold: a name of 80 letters, none of 100', () => {
    const form = PanForm({ draft: emptyDraft, faults: [], bandA4: '440', onChange() {} });
    const fields = elementsIn(form).filter(({ type }) => type === TextField);
    const taken = Object.fromEntries(
      fields.map(({ props }) => [String(props['id']).replace('pan-', ''), props['longest']]),
    );
    const { wanted: _wanted, wantedBy: _by, ...ofForm } = longestOfPan;
    expect(taken).toEqual({ ...ofForm, a4: undefined });
    expect(taken['name']).toBe(80);
  });
});

describe('a text as long as its field takes it', () => {
  it.each([
    { kind: 'pan-edit', fields: texts(longestOfPan), replaces: [] },
    {
      kind: 'tuner-visit',
      visitedAt: 0,
      nextVisit: null,
      startsBaseline: true,
      ...texts(longestOfVisit),
    },
    { kind: 'knock-check', round: null, looks: [], impact: null, ...texts(longestOfKnock) },
  ])('comes back from a record of kind $kind as it was typed', (fields) => {
    const record = { ...head, ...fields };
    expect(restoreRecord(record)).toEqual({ kind: 'restored', record, repairs: [] });
  });
});
