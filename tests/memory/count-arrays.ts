// Counts the typed arrays and buffers that are made while something runs, by whatever way.

const kinds = ['Float32Array', 'Float64Array', 'Int32Array', 'Uint32Array', 'ArrayBuffer'] as const;

type AnyConstructor = new (...given: never[]) => object;

/**
 * How many typed arrays (views on old memory among them) and buffers `work` makes: with `new`, by `from` and `of`, or
 * by methods that return a new array (`slice`, `map`, `subarray` …), which ask the constructor of the old one.
 */
export function arraysMadeBy(work: () => void): number {
  let made = 0;
  const undo = kinds.map((kind) => {
    const original: AnyConstructor = Reflect.get(globalThis, kind);
    const counting: AnyConstructor = new Proxy(original, {
      construct(target, given, asked) {
        made++;
        return Reflect.construct(target, given, asked === counting ? target : asked);
      },
      get: (target, key) => (key === Symbol.species ? counting : Reflect.get(target, key)),
    });
    const prototype: object = Reflect.get(original, 'prototype');
    Reflect.set(globalThis, kind, counting);
    Reflect.set(prototype, 'constructor', counting);
    return () => {
      Reflect.set(globalThis, kind, original);
      Reflect.set(prototype, 'constructor', original);
    };
  });
  try {
    work();
  } finally {
    for (const each of undo) each();
  }
  return made;
}
