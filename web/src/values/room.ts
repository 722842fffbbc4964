import type { Band } from "./look";

/**
 * Bands of the room to the opposing teeth: the darker the less room, in a hue of their own, so that they cannot be taken for
 * undercut. A band holds what is below its edge [mm]; more than the last is plain plaster.
 */
export const ROOM_BANDS: readonly (Band & { readonly belowMm: number })[] = [
  { fromMm: -Infinity, belowMm: 0.5, fill: "#25414c", line: "#6f929c", hatch: "crossed" },
  { fromMm: 0.5, belowMm: 1, fill: "#557783", line: "#2f4f5a", hatch: "falling" },
  { fromMm: 1, belowMm: 1.5, fill: "#90aab0", line: "#66858e", hatch: "rising" },
  { fromMm: 1.5, belowMm: 2, fill: "#c5d3d3", line: "#c5d3d3", hatch: "plain" },
];

/** "under 0.5", "0.5–1.0". */
export const roomText = (band: { readonly fromMm: number; readonly belowMm: number }): string =>
  Number.isFinite(band.fromMm) ? `${band.fromMm.toFixed(1)}–${band.belowMm.toFixed(1)}` : `under ${band.belowMm.toFixed(1)}`;
