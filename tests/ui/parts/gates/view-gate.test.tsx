import type { ComponentChildren, VNode } from 'preact';
import { describe, expect, it, vi } from 'vitest';
import type { StoreTrouble } from '../../../../src/domain/ports/pan-store';
import type { OpenView } from '../../../../src/state/asking/open-view';
import { ViewGate } from '../../../../src/ui/parts/gates/view-gate';
import { rackWords, storeTroubleWords } from '../../../../src/ui/words/rack-words';

interface Drawn {
  readonly text: string;
  readonly tap: (() => void) | null;
}

/** What is drawn, down to its texts, and what its button does; enough for parts without a state of their own. */
function draw(children: ComponentChildren): Drawn {
  if (typeof children === 'string') return { text: children, tap: null };
  if (Array.isArray(children)) {
    const all = children.map(draw);
    return {
      text: all.map(({ text }) => text).join(' '),
      tap: all.find(({ tap }) => tap !== null)?.tap ?? null,
    };
  }
  if (typeof children !== 'object' || children === null) return { text: '', tap: null };
  const { type, props } = children as VNode<{ children?: ComponentChildren; onClick?: () => void }>;
  if (typeof type === 'function') {
    const part = type as (props: unknown) => ComponentChildren;
    return draw(part(props));
  }
  const inside = draw(props.children);
  return type === 'button' ? { ...inside, tap: props.onClick ?? null } : inside;
}

const gate = (view: OpenView<{ readonly name: string }>, onRetry?: () => void) =>
  draw(
    <ViewGate view={view} missing="No such pan." {...(onRetry ? { onRetry } : {})}>
      {({ name }) => name}
    </ViewGate>,
  );

describe('what is read from the rack', () => {
  it('is shown once it is open', () => {
    expect(gate({ kind: 'open', name: 'Heron' }).text).toBe('Heron');
  });

  it('is said to be read, or to be missing, until then', () => {
    expect(gate({ kind: 'loading' }).text).toContain(rackWords.reading);
    expect(gate({ kind: 'missing' }).text).toBe('No such pan.');
  });

  it('has a sentence for each trouble, and a button where something can be tried', () => {
    const troubles = Object.keys(storeTroubleWords) as StoreTrouble[];
    expect(troubles.length).toBeGreaterThan(3);
    for (const trouble of troubles) {
      const retry = vi.fn();
      const drawn = gate({ kind: 'trouble', trouble }, retry);
      expect(drawn.text).toContain(storeTroubleWords[trouble]);
      drawn.tap?.();
      expect(retry).toHaveBeenCalledTimes(1);
      expect(gate({ kind: 'trouble', trouble }).text).toContain(storeTroubleWords[trouble]);
      expect(gate({ kind: 'trouble', trouble }).tap).toBeNull();
    }
  });
});
