import { useCallback, useEffect, useRef, useState } from "react";
import { type InTheWay, planInTheWay } from "../state/searching";
import type { Planned } from "../state/planning";
import type { PathFound, PathMap } from "../wire/path";
import type { TeethInfo } from "../wire/types";
import { useBench, useDesk } from "./use-bench";

export interface Search {
  readonly map: PathMap | null;
  readonly found: PathFound | null;
  /** How far it has come; null once it has ended. */
  readonly running: { readonly what: string; readonly share: number } | null;
  /** What it counts as in the way. */
  readonly counted: { readonly inTheWay: InTheWay; readonly plan: Planned | null };
}

const BEGUN = { map: null, found: null, running: { what: "looking for planes and undercuts", share: 0 } };

/** The search for the path. It belongs to the teeth it looks at: other teeth, or another cast, stop it and make it void. */
export function useSearch(): {
  readonly search: Search | null;
  /** Whether something else counts as in the way by now. */
  readonly otherwise: boolean;
  readonly look: () => void;
  readonly stop: () => void;
} {
  const { bench } = useDesk();
  const teeth = useBench((s) => s.teeth);
  const inTheWay = useBench((s) => s.inTheWay);
  const plan = useBench((s) => planInTheWay(s));
  const [state, setState] = useState<{ readonly teeth: TeethInfo | null; readonly search: Search } | null>(null);
  const running = useRef<AbortController | null>(null);
  useEffect(
    () => () => {
      running.current?.abort();
    },
    [teeth],
  );
  const look = useCallback((): void => {
    running.current?.abort();
    const mine = new AbortController();
    running.current = mine;
    const counted = { inTheWay, plan };
    setState({ teeth, search: { ...BEGUN, counted } });
    const tell = (change: (before: Search) => Search): void => {
      if (!mine.signal.aborted) setState((before) => (before ? { ...before, search: change(before.search) } : null));
    };
    const listener = {
      coarse: (map: PathMap): void => tell((before) => ({ ...before, map })),
      progress: (what: string, share: number): void => tell((before) => ({ ...before, running: { what, share } })),
    };
    void bench.searching.path(listener, mine.signal).then((found) => {
      if (mine.signal.aborted) return;
      setState(found ? { teeth, search: { map: found.map, found, running: null, counted } } : null);
    });
  }, [bench, teeth, inTheWay, plan]);
  const stop = useCallback((): void => {
    running.current?.abort();
    setState(null);
  }, []);
  const search = state?.teeth === teeth ? state.search : null;
  const otherwise = search !== null && (search.counted.inTheWay !== inTheWay || search.counted.plan !== plan);
  return { search, otherwise, look, stop };
}
