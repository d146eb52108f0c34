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

/** The expression that gives the target in the page, or null. */
export const expressionOf = ({ role, name, isBeginning = false }: Target): string =>
  `(${elementOnPage})(${JSON.stringify({ selector: selectorOf[role], name, isBeginning })})`;

/** The expression that gives the place to tap on in the page, or null. */
export const pointExpression = (target: Target): string => `(${pointOn})(${expressionOf(target)})`;

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

/** In the page: scrolls `element` to the middle; its own middle, or null as long as something lies over it. */
function pointOn(element: Element | null): Point | null {
  if (!element) return null;
  element.scrollIntoView({ block: 'center', behavior: 'instant' });
  const { left, top, width, height } = element.getBoundingClientRect();
  const point = { x: Math.round(left + width / 2), y: Math.round(top + height / 2) };
  const hit = document.elementFromPoint(point.x, point.y);
  return hit && element.contains(hit) ? point : null;
}
