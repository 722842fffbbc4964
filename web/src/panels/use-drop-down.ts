import { type RefObject, useEffect, useRef } from "react";

/** A list that drops down from its summary, and shuts when the hand goes elsewhere. */
export function useDropDown(): { readonly list: RefObject<HTMLDetailsElement | null>; readonly shut: () => void } {
  const list = useRef<HTMLDetailsElement>(null);
  useEffect(() => {
    const away = (event: Event): void => {
      if (event.target instanceof Node && !list.current?.contains(event.target)) close(list);
    };
    window.addEventListener("pointerdown", away);
    return () => window.removeEventListener("pointerdown", away);
  }, []);
  return { list, shut: () => close(list) };
}

function close(list: RefObject<HTMLDetailsElement | null>): void {
  if (list.current) list.current.open = false;
}
