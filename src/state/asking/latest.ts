// Of several questions that are asked one after the other, only the answer to the latest one counts.

/** True as long as nothing was asked since. */
export type IsLatest = () => boolean;

export interface Latest {
  /** Asks anew: every answer that is still awaited is worthless from now on. */
  begin(): IsLatest;
  /** Goes along with what was asked last, and makes nothing worthless. */
  join(): IsLatest;
  /** No answer that is still awaited is wanted any more. */
  drop(): void;
}

export function createLatest(): Latest {
  let newest = 0;
  const join = (): IsLatest => {
    const mine = newest;
    return () => mine === newest;
  };
  return {
    begin() {
      newest++;
      return join();
    },
    join,
    drop() {
      newest++;
    },
  };
}
