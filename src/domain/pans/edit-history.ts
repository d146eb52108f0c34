// Undo and redo, for anything that is replaced as a whole at every change.

interface Step<T> {
  readonly value: T;
  /** Changes in a row about the same thing are one step back. */
  readonly about: string | null;
}

export interface EditHistory<T> {
  readonly present: T;
  readonly past: readonly Step<T>[];
  readonly future: readonly T[];
  /** What the present was made by. */
  readonly about: string | null;
}

/** Most steps back that are kept (chosen, no source). */
const longest = 200;

export const beginHistory = <T>(present: T): EditHistory<T> => ({
  present,
  past: [],
  future: [],
  about: null,
});

/** After a change. Changes in a row that name the same `about` are taken back together; null never joins. */
export function changed<T>(
  history: EditHistory<T>,
  present: T,
  about: string | null = null,
): EditHistory<T> {
  if (present === history.present) return history;
  if (about !== null && about === history.about) return { ...history, present, future: [] };
  const step = { value: history.present, about: history.about };
  return { present, past: [...history.past, step].slice(-longest), future: [], about };
}

/** One step back; the same history where there is none. */
export function undone<T>(history: EditHistory<T>): EditHistory<T> {
  const step = history.past.at(-1);
  if (!step) return history;
  return {
    present: step.value,
    past: history.past.slice(0, -1),
    future: [history.present, ...history.future],
    about: null,
  };
}

/** One step forward again; the same history where nothing was taken back. */
export function redone<T>(history: EditHistory<T>): EditHistory<T> {
  const [next, ...later] = history.future;
  if (next === undefined) return history;
  const step = { value: history.present, about: null };
  return { present: next, past: [...history.past, step], future: later, about: null };
}
