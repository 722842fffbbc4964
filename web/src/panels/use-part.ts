import { type MouseEvent, useEffect, useRef } from "react";
import { useBench, useDesk } from "./use-bench";

/**
 * What an entry of the list of parts needs: its part stands out on the cast and in the drawing while the pointer is over the entry, and
 * stays so by a click; chosen there, the entry comes into sight here.
 */
export function usePart<E extends HTMLElement>(part: string, className: string) {
  const { bench } = useDesk();
  const chosen = useBench((s) => s.chosenPart === part);
  const entry = useRef<E>(null);
  useEffect(() => {
    if (chosen) entry.current?.scrollIntoView({ block: "nearest" });
  }, [chosen]);
  return {
    ref: entry,
    className: chosen ? `${className} chosen` : className,
    "data-part": part,
    onMouseEnter: () => bench.speakOf(part),
    onMouseLeave: () => bench.speakOf(null),
    onClick: ({ target }: MouseEvent) => {
      if (!(target instanceof HTMLElement) || !target.closest("select, .word")) bench.store.set({ chosenPart: part, step: null });
    },
  };
}
