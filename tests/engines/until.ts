// Waiting for what is meant, with an upper bound.

/** Milliseconds between two looks. */
const lookEvery = 60;

/**
 * Resolves to the first answer of `look` that is neither null, undefined nor false; rejects with `what` after `limit`
 * (ms). A look that throws counts as "not yet", and what it threw last is told.
 */
export async function until<Answer>(
  what: string,
  look: () => Promise<Answer | null | undefined | false> | Answer | null | undefined | false,
  limit: number,
): Promise<Answer> {
  const end = Date.now() + limit;
  let trouble = '';
  for (;;) {
    try {
      const answer = await look();
      if (answer !== null && answer !== undefined && answer !== false) return answer;
      trouble = '';
    } catch (error) {
      trouble = ` (${messageOf(error)})`;
    }
    if (Date.now() > end) {
      throw new Error(`waited ${Math.round(limit / 1000)} s for ${what}${trouble}`);
    }
    await new Promise((done) => setTimeout(done, lookEvery));
  }
}

/** `work`, or a rejection after `limit` (ms). */
export async function within<Result>(
  what: string,
  limit: number,
  work: Promise<Result>,
): Promise<Result> {
  let late: NodeJS.Timeout | undefined;
  const tooLate = new Promise<never>((_, fail) => {
    late = setTimeout(
      () => fail(new Error(`${what} took longer than ${Math.round(limit / 1000)} s`)),
      limit,
    );
  });
  try {
    return await Promise.race([work, tooLate]);
  } finally {
    clearTimeout(late);
  }
}

export const messageOf = (error: unknown): string =>
  error instanceof Error ? error.message : String(error);
