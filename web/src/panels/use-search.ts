import { useCallback, useEffect, useRef, useState } from "react";
import type { PathFound, PathMap } from "../wire/path";
import type { TeethInfo } from "../wire/types";
import { useBench, useDesk } from "./use-bench";

export interface Search {
  readonly map: PathMap | null;
  readonly found: PathFound | null;
  /** How far it has come; null once it has ended. */
  readonly running: { readonly what: string; readonly share: number } | null;
}

const BEGUN: Search = { map: null, found: null, running: { what: "looking for planes and undercuts", share: 0 } };

/** The search for the path. It belongs to the teeth it looks at: other teeth, or another cast, stop it and make it void. */
export function useSearch(): { readonly search: Search | null; readonly look: () => void; readonly stop: () => void } {
  const { bench } = useDesk();
  const teeth = useBench((s) => s.teeth);
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
    setState({ teeth, search: BEGUN });
    const tell = (change: (before: Search) => Search): void => {
      if (!mine.signal.aborted) setState((before) => (before ? { ...before, search: change(before.search) } : null));
    };
    const listener = {
      coarse: (map: PathMap): void => tell((before) => ({ ...before, map })),
      progress: (what: string, share: number): void => tell((before) => ({ ...before, running: { what, share } })),
    };
    void bench.searchPath(listener, mine.signal).then((found) => {
      if (mine.signal.aborted) return;
      setState(found ? { teeth, search: { map: found.map, found, running: null } } : null);
    });
  }, [bench, teeth]);
  const stop = useCallback((): void => {
    running.current?.abort();
    setState(null);
  }, []);
  return { search: state?.teeth === teeth ? state.search : null, look, stop };
}
