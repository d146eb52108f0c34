// Finds what a user sees, by what it is and what it says. Some of these functions run in the page, in any engine.

export interface Target {
  readonly role: keyof typeof selectorOf;
  /** What it says, or is called; any spaces. */
  readonly name: string;
  /** `name` is only the beginning of it. */
  readonly isBeginning?: boolean;
}

const selectorOf = {
  link: 'a[href]',
  button: 'button, [role="button"], summary',
  field: 'input, textarea, select',
  /** A file is chosen by its label. */
  file: 'input[type="file"]',
} as const;

export const link = (name: string): Target => ({ role: 'link', name });
export const button = (name: string): Target => ({ role: 'button', name });
/** A label may hold more, like a hint. */
export const field = (name: string): Target => ({ role: 'field', name, isBeginning: true });
/** The row of something, with whatever else it says. */
export const row = (name: string): Target => ({ role: 'link', name, isBeginning: true });
export const file = (name: string): Target => ({ role: 'file', name });

export const named = ({ role, name }: Target): string => `${role} “${name}”`;

interface Search {
  readonly selector: string;
  readonly name: string;
  readonly isBeginning: boolean;
}

/** A place on the screen, px from its upper left corner. */
export interface Point {
  readonly x: number;
  readonly y: number;
}

const searchFor = ({ role, name, isBeginning = false }: Target): string =>
  JSON.stringify({ selector: selectorOf[role], name, isBeginning } satisfies Search);

/** The expression that gives the target in the page, or null. */
export const expressionOf = (target: Target): string => `(${elementOnPage})(${searchFor(target)})`;

/** The expression that gives the place in the page to tap on, or null. */
export const aimExpression = (target: Target): string =>
  `(${aim})(${elementOnPage}, ${searchFor(target)})`;

declare global {
  interface Window {
    /** Whether the last tap went past what was aimed at. */
    missed?: boolean;
    stopAiming?: AbortController;
  }
}

/** The expression that says whether the last tap went somewhere else. A page that was left at once cannot tell. */
export const hasMissed = 'window.missed === true';

/** In the page: the first one that can be used, or null. */
function elementOnPage({ selector, name, isBeginning }: Search): Element | null {
  const plain = (text: string | null | undefined) => (text ?? '').replace(/\s+/g, ' ').trim();
  const namesOf = (element: Element): readonly string[] => [
    plain(element.getAttribute('aria-label')),
    ...(element instanceof HTMLInputElement || element instanceof HTMLTextAreaElement
      ? Array.from(element.labels ?? [], (label) => plain(label.textContent))
      : [plain(element.textContent)]),
  ];
  const isUsable = (element: Element): boolean =>
    !element.matches(':disabled') &&
    // The field of a file is hidden behind its label.
    (element.matches('[type="file"]') || element.getClientRects().length > 0);
  const isNamed = (element: Element): boolean =>
    namesOf(element).some((each) => (isBeginning ? each.startsWith(name) : each === name));
  return (
    [...document.querySelectorAll(selector)].find(
      (element) => isUsable(element) && isNamed(element),
    ) ?? null
  );
}

/** In the page: scrolls there; the middle of what is found, or null as long as there is none or something lies over it. */
function aim(find: (search: Search) => Element | null, search: Search): Point | null {
  const element = find(search);
  if (!element) return null;
  element.scrollIntoView({ block: 'center', behavior: 'instant' });
  const { left, top, width, height } = element.getBoundingClientRect();
  const point = { x: Math.round(left + width / 2), y: Math.round(top + height / 2) };
  const hit = document.elementFromPoint(point.x, point.y);
  window.missed = false;
  window.stopAiming?.abort();
  window.stopAiming = new AbortController();
  window.addEventListener(
    'click',
    ({ target }) => {
      window.missed = !find(search)?.contains(target as Node);
    },
    { capture: true, once: true, signal: window.stopAiming.signal },
  );
  return hit && element.contains(hit) ? point : null;
}
