import type { ReactElement } from "react";
import { LIGHT } from "../values/look";
import { useBench } from "./use-bench";

interface Sample {
  readonly words: string;
  readonly width: number;
  readonly dash?: string;
  readonly fill?: "slant" | "dots" | "lattice" | "solid";
}

const PARTS: readonly Sample[] = [
  { words: "major connector", width: 2, fill: "slant" },
  { words: "base", width: 1.4, dash: "4 2", fill: "dots" },
  { words: "base connector", width: 1, fill: "lattice" },
  { words: "rest", width: 1.4, fill: "solid" },
  { words: "retentive arm", width: 3 },
  { words: "reciprocal arm", width: 3, dash: "5 2.5" },
  { words: "guiding plate", width: 4.4 },
  { words: "tooth replaced", width: 1.2, dash: "3 2" },
];
const TORUS: Sample = { words: "torus", width: 1.8, dash: "1.2 3" };

/** How each part is drawn, by line and hatching alone; the pages draw each line otherwise still, for they are told in black alone. */
export function PlanLegend(): ReactElement {
  const tori = useBench((s) => s.planned?.sheet?.plan.tori.some(({ edge }) => edge !== null) ?? false);
  return (
    <div className="legend num" aria-label="Legend">
      {[...PARTS, ...(tori ? [TORUS] : [])].map(({ words, width, dash, fill }) => (
        <span key={words}>
          <svg width="22" height="13" aria-hidden="true">
            <defs>
              <pattern id={`plan-${fill}`} width="4" height="4" patternUnits="userSpaceOnUse" patternTransform={fill === "dots" ? "" : "rotate(45)"}>
                {fill === "dots" ? <circle cx="2" cy="2" r="0.7" fill={LIGHT.lead} /> : <path d={fill === "lattice" ? "M0 0V4M0 0H4" : "M0 0V4"} stroke={LIGHT.lead} />}
              </pattern>
            </defs>
            <rect width="22" height="13" fill={LIGHT.plaster} />
            {fill && <rect x="2" y="2" width="18" height="9" fill={fill === "solid" ? LIGHT.lead : `url(#plan-${fill})`} />}
            {fill ? (
              <rect x="2" y="2" width="18" height="9" fill="none" stroke={LIGHT.lead} strokeWidth={width} strokeDasharray={dash} />
            ) : (
              <path d="M1 6.5H21" stroke={LIGHT.lead} strokeWidth={width} strokeDasharray={dash} />
            )}
          </svg>{" "}
          {words}
        </span>
      ))}
    </div>
  );
}
