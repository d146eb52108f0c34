// Of several questions asked one after another, only the answer to the latest counts.

/** True as long as nothing was asked since. */
export type IsLatest = () => boolean;

export interface Latest {
  /** Asks anew: answers that are still awaited no longer count. */
  begin(): IsLatest;
  /** Joins the question asked last, so that its answer still counts. */
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
