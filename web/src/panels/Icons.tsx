import type { ReactElement } from "react";

/** Icons are the hand instruments: rod, gauge lip, lead, spirit level. Drawn in brass and ink, never filled signs. */

/** The rod with the round lip of a gauge; `lip` is how far it stands out [mm], 0 for the plain rod. */
export function RodIcon({ lip }: { readonly lip: number }): ReactElement {
  const half = 3 + lip * 8;
  return (
    <svg width="26" height="34" viewBox="0 0 26 34" aria-hidden="true">
      <path d="M13 1V29" stroke="var(--brass)" strokeWidth="5" />
      {lip > 0 ? (
        <path d={`M${13 - half} 30.5H${13 + half}`} stroke="var(--brass)" strokeWidth="3.6" />
      ) : (
        <path d="M10.5 29H15.5L13 33Z" fill="var(--brass)" />
      )}
      <path d="M11.6 2V28" stroke="#fff" strokeOpacity=".35" strokeWidth="1" />
    </svg>
  );
}

const PATHS = {
  open: "M3 14V5H8L10 7H17V14ZM3 14L5 9H19L17 14", // a tray
  picture: "M3 4H17V16H3ZM3 13L8 9L12 12L14 10L17 13",
  undo: "M7 4L3 8L7 12M3 8H12A4.5 4.5 0 0 1 12 17H8",
  redo: "M13 4L17 8L13 12M17 8H8A4.5 4.5 0 0 0 8 17H12",
  level: "M2 7H18V13H2ZM8 7V13M12 7V13M10 10m-1.3 0a1.3 1.3 0 1 0 2.6 0a1.3 1.3 0 1 0 -2.6 0",
  keys: "M2 5H18V15H2ZM5 8H6M9 8H10M13 8H14M5 12H15",
  look: "M10 3A7 7 0 1 0 10 17A7 7 0 1 0 10 3M10 3V17M10 5.5H15M10 8H16.6M10 10.5H16.9M10 13H16",
  seat: "M10 2V11M5.5 13H14.5M10 11V13M4 17H16",
  remove: "M5 5L15 15M15 5L5 15",
} as const;

export type IconName = keyof typeof PATHS;

export function Icon({ name }: { readonly name: IconName }): ReactElement {
  return (
    <svg width="18" height="18" viewBox="0 0 20 20" fill="none" stroke="currentColor" strokeWidth="1.4" strokeLinecap="round" strokeLinejoin="round" aria-hidden="true">
      <path d={PATHS[name]} />
    </svg>
  );
}
