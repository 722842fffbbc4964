/**
 * The colours of the bench. Undercut bands grow darker with depth, so that they keep their order in greyscale and for every
 * kind of colour vision, and each has its own hatching. The cast is plaster in both looks, so that bands and lead read the same.
 */
export interface Look {
  readonly name: "light" | "dark";
  readonly table: string;
  readonly tableEdge: string;
  readonly plaster: string;
  readonly base: string;
  readonly inside: string;
  readonly lead: string;
  readonly brass: string;
  readonly brassShade: string;
  /** The alloy of a framework. */
  readonly metal: string;
  /** Pale edge of brass on the cast, so that it stands out from every band. */
  readonly casing: string;
  readonly paper: string;
  readonly ink: string;
  readonly soft: string;
  readonly rule: string;
}

export const LIGHT: Look = {
  name: "light",
  table: "#fdfbf5",
  tableEdge: "#e9e3d6",
  plaster: "#efe6d6",
  base: "#f4f0e7",
  inside: "#cfc4b0",
  lead: "#1c2830",
  brass: "#9a6a2f",
  brassShade: "#5f3f17",
  metal: "#8c9499",
  casing: "#fff8e8",
  paper: "#fffdf8",
  ink: "#22303a",
  soft: "#5f6972",
  rule: "#d9d2c3",
};

export const DARK: Look = {
  name: "dark",
  table: "#2b2f31",
  tableEdge: "#191c1e",
  plaster: "#d6cbb8",
  base: "#a49c8d",
  inside: "#6f675a",
  lead: "#141b20",
  brass: "#a8722f",
  brassShade: "#6d4a1f",
  metal: "#8b9297",
  casing: "#fff3d9",
  paper: "#202426",
  ink: "#ebe5d8",
  soft: "#a8a699",
  rule: "#3b4043",
};

/** The hatching of a band; the shader and the legend draw the same. */
export type Hatch = "plain" | "rising" | "falling" | "crossed";

export interface Band {
  /** Shallowest depth of the band [mm]; it reaches to the next band's. */
  readonly fromMm: number;
  readonly fill: string;
  readonly line: string;
  readonly hatch: Hatch;
}

/** The bands for three gauge sizes: they begin where an undercut counts, and change exactly at the gauges [mm]. */
export function bands([first, second, third]: readonly number[], shallowMm: number): readonly Band[] {
  if (first === undefined || second === undefined || third === undefined) return [];
  return [
    { fromMm: shallowMm, fill: "#efd9a0", line: "#efd9a0", hatch: "plain" },
    { fromMm: first, fill: "#cf8f52", line: "#9c6430", hatch: "rising" },
    { fromMm: second, fill: "#8a4a66", line: "#5d2c42", hatch: "falling" },
    { fromMm: third, fill: "#33224a", line: "#7d6799", hatch: "crossed" },
  ];
}

/** Hatching: distance between lines and their width [CSS px]. */
export const HATCH_STEP_PX = 6;
export const HATCH_LINE_PX = 1.1;
