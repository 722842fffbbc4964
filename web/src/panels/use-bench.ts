import { createContext, useContext, useSyncExternalStore } from "react";
import { type Action, type Hands, labelOf } from "../state/actions";
import type { Bench } from "../state/bench";
import type { BenchState } from "../state/bench-state";

export interface Desk {
  readonly bench: Bench;
  readonly hands: Hands;
}

export const DeskContext = createContext<Desk | null>(null);

export function useDesk(): Desk {
  const desk = useContext(DeskContext);
  if (!desk) throw new Error("a panel was drawn outside the bench");
  return desk;
}

/** One piece of the state; the panel is drawn again when it changes. */
export function useBench<T>(pick: (state: BenchState) => T): T {
  const { store } = useDesk().bench;
  return useSyncExternalStore(store.subscribe, () => pick(store.get()));
}

/** What a button for an action needs. */
export function useAction(action: Action): { run: () => void; enabled: boolean; label: string; hint: string } {
  const { bench, hands } = useDesk();
  const enabled = useBench(action.can);
  const label = useBench((state) => labelOf(action, state));
  const key = action.keys[0];
  return { run: () => action.run(bench, hands), enabled, label, hint: key ? `${label} (${keyText(key)})` : label };
}

const SIGNS: Record<string, string> = { ArrowUp: "↑", ArrowDown: "↓", ArrowLeft: "←", ArrowRight: "→", Escape: "Esc" };

/** A key as it is printed on a keyboard. */
export const keyText = (key: string): string =>
  key
    .split("+")
    .map((part) => SIGNS[part] ?? (part.length === 1 ? part.toUpperCase() : part))
    .join(" ");
