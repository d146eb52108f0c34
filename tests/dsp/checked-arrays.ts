// Typed arrays that throw where a read or a write is out of range: real ones give undefined, or forget it.

const typed = ['Float32Array', 'Float64Array', 'Uint8Array', 'Uint32Array'] as const;
type Typed = Float32Array | Float64Array | Uint8Array | Uint32Array;

/** Whether a typed array takes `key` for an index: numbers begin with a digit or a sign. */
const isIndex = (key: string): boolean =>
  key.charCodeAt(0) <= 57 || key === 'NaN' || key === 'Infinity';

/** `array` seen through a check of every place that is read or written. */
export function checked<T extends Typed>(array: T): T {
  const methods = new Map<string | symbol, unknown>();
  const methodOf = (key: string | symbol, method: () => unknown): unknown => {
    const known = methods.get(key);
    if (known) return known;
    const made = (...given: readonly unknown[]): unknown => {
      const result: unknown = Reflect.apply(method, array, given);
      return result === array ? seen : result;
    };
    methods.set(key, made);
    return made;
  };
  const outOfRange = (key: string): RangeError =>
    new RangeError(`place ${key} of an array of ${array.length}`);
  const seen: T = new Proxy(array, {
    get(_, key) {
      const value: unknown = array[key as unknown as number];
      if (typeof value === 'number') return value;
      if (typeof value === 'function') return methodOf(key, value as () => unknown);
      if (typeof key === 'string' && isIndex(key)) throw outOfRange(key);
      return value;
    },
    set(_, key, value) {
      if (typeof key === 'string' && isIndex(key) && !(key in array)) throw outOfRange(key);
      array[key as unknown as number] = value;
      return true;
    },
  });
  return seen;
}

/** Runs `task` with every typed array that it makes checked. */
export function withCheckedArrays<T>(task: () => T): T {
  const own = typed.map((name) => [name, globalThis[name]] as const);
  for (const [name, made] of own) {
    const checking = new Proxy(made, {
      construct: (target, given) => checked(Reflect.construct(target, given) as Typed),
      // The own one takes no checked array for its own.
      get: (target, key) =>
        key === 'from'
          ? (...given: readonly unknown[]) =>
              checked(Reflect.apply(target.from, target, given) as Typed)
          : Reflect.get(target, key),
    });
    Object.defineProperty(globalThis, name, {
      value: checking,
      configurable: true,
      writable: true,
    });
  }
  try {
    return task();
  } finally {
    for (const [name, made] of own) {
      Object.defineProperty(globalThis, name, { value: made, configurable: true, writable: true });
    }
  }
}
