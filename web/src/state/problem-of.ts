import { Refused } from "../wire/api";
import type { Problem } from "../wire/types";

/** What went wrong, in the form in which it is shown. */
export function problemOf(error: unknown): Problem {
  if (error instanceof Refused) return error.problem;
  const message = error instanceof Error ? error.message : String(error);
  return { code: "bench.unexpected", message: `The bench could not go on: ${message}`, advice: "Reload the page; the cast is kept." };
}
