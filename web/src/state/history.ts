import { type Command, fused, idle, inverse } from "./document";

/** Like edits within this time become one step [ms]. */
export const FUSE_MS = 500;

interface Step {
  readonly command: Command;
  readonly at: number;
  readonly gesture: number | null;
}

/** What was done and can be undone. Immutable: each call gives the next history. */
export interface History {
  readonly past: readonly Step[];
  readonly future: readonly Step[];
}

export const NO_HISTORY: History = { past: [], future: [] };

/**
 * The history after one more command. It fuses with the last like one within half a second of it, and always within the same
 * gesture: a drag is one step, however long the hand rests in it.
 */
export function recorded(history: History, command: Command, at: number, gesture: number | null): History {
  const last = history.past.at(-1);
  const near = last && ((gesture !== null && gesture === last.gesture) || (gesture === last.gesture && at - last.at < FUSE_MS));
  const one = near ? fused(last.command, command) : null;
  const past = one ? history.past.slice(0, -1) : history.past;
  const step = { command: one ?? command, at, gesture };
  return { past: idle(step.command) ? past : [...past, step], future: [] };
}

/** The command that undoes the last step, and the history after it; null when there is none. */
export function undone({ past, future }: History): { command: Command; history: History } | null {
  const last = past.at(-1);
  if (!last) return null;
  return { command: inverse(last.command), history: { past: past.slice(0, -1), future: [last, ...future] } };
}

/** The command that does the last undone step again. */
export function redone({ past, future }: History): { command: Command; history: History } | null {
  const [next, ...rest] = future;
  if (!next) return null;
  // It may not fuse with what comes next: a person looked at it in between.
  return { command: next.command, history: { past: [...past, { ...next, at: -Infinity }], future: rest } };
}
