import type { ReactElement } from "react";
import { lengthText, mm } from "../values/units";
import type { ClaspTold, FamilyAnswer, ForcesTold, PlainFinding } from "../wire/abutments";
import { type ForceFrame, forceFrame, rangeText, stressFrame } from "./force-frame";
import { useBench } from "./use-bench";

/** What the clasp does: force over travel, stress, and its figures in a line. */
export function ClaspFigures({ family }: { readonly family: FamilyAnswer }): ReactElement | null {
  const { clasp, noClasp } = family;
  if (!clasp) return noClasp ? <p className="soft familyline">No arms drawn: {noClasp}.</p> : null;
  return (
    <div className="claspfigures">
      <Key clasp={clasp} bar={family.arm === "bar"} />
      {clasp.forces ? (
        <>
          <ForcePlot forces={clasp.forces} findings={clasp.findings} />
          <StressBar forces={clasp.forces} findings={clasp.findings} />
        </>
      ) : (
        <p className="soft">The tip stands where an undercut would have to be made, so there is no force yet.</p>
      )}
      {clasp.advice.length > 0 && (
        <ul className="advice">
          {clasp.advice.map((each) => (
            <li key={each}>{each}</li>
          ))}
        </ul>
      )}
    </div>
  );
}

function Key({ clasp, bar }: { readonly clasp: ClaspTold; readonly bar: boolean }): ReactElement {
  const units = useBench((s) => s.units);
  const text = (length: number): string => lengthText(mm(length), units === "in" ? "in" : "mm", 1);
  const { retentive, opposing, encirclementDeg, crossingDeg } = clasp;
  const { root, tip } = retentive;
  return (
    <p className="soft num armkey">
      <i className="swatch metal" /> {bar ? "over the gum" : "rigid"} <i className="swatch brass" /> {bar ? "touches" : "springs"} · {text(retentive.lengthMm)} long,{" "}
      {root.shape === "round" ? `⌀ ${text(root.widthMm)}` : `${text(root.widthMm)} × ${text(root.thicknessMm)} to ${text(tip.widthMm)} × ${text(tip.thicknessMm)}`}
      {opposing ? ` · opposing ${text(opposing.lengthMm)}` : ""} · goes round {encirclementDeg.toFixed(0)}°{crossingDeg === null ? "" : ` · crosses the margin at ${crossingDeg.toFixed(0)}°`}
    </p>
  );
}

const limitOf = (findings: readonly PlainFinding[], rule: string): number | null => {
  const value = findings.find((each) => each.rule === rule)?.limit.value;
  return typeof value === "number" ? value : null;
};

const path = (frame: ForceFrame, way: ForcesTold["leastPull"]): string => way.map(([travel, pull], i) => `${i === 0 ? "M" : "L"}${frame.x(travel).toFixed(1)} ${frame.y(pull).toFixed(1)}`).join("");

/** The pull that draws the denture past this clasp, over its travel: a band from the least to the greatest. */
function ForcePlot({ forces, findings }: { readonly forces: ForcesTold; readonly findings: readonly PlainFinding[] }): ReactElement {
  const least = limitOf(findings, "clasp-pull-warn-below");
  const most = limitOf(findings, "clasp-pull-warn-above");
  const frame = forceFrame(forces, least, most);
  const { width, height, left, foot, x, y } = frame;
  const { toLineMm, freeAtMm, pullN, locksFromFriction } = forces;
  const told = pullN ? `${rangeText(pullN, 1)} N` : "locks itself";
  const band = `${path(frame, forces.mostPull)}${path(frame, [...forces.leastPull].reverse()).replace("M", "L")}Z`;
  return (
    <figure>
      <svg viewBox={`0 0 ${width} ${height}`} className="forceplot num" role="img" aria-label={`Pull over travel: ${told}${freeAtMm === null ? "" : `, free at ${freeAtMm.toFixed(2)} mm`}`} data-pull={told}>
        {least !== null && most !== null && <rect x={left} y={y(most)} width={width - left} height={Math.max(0, y(least) - y(most))} className="wanted" />}
        {frame.steps.map((n) => (
          <g key={n}>
            <path d={`M${left} ${y(n)}H${width}`} className="grid" />
            <text x={left - 4} y={y(n) + 3} textAnchor="end">
              {n}
            </text>
          </g>
        ))}
        {frame.ticks.map((t) => (
          <text key={t} x={x(t)} y={height - 13} textAnchor="middle">
            {t}
          </text>
        ))}
        <path d={band} className="range" />
        <path d={path(frame, forces.leastPull)} className="edge" />
        <path d={path(frame, forces.mostPull)} className="edge" />
        {toLineMm !== null && (
          <g>
            <path d={`M${x(toLineMm)} ${foot}V8`} className="line" />
            <text x={x(toLineMm) - 3} y="13" textAnchor="end">
              survey line
            </text>
          </g>
        )}
        {freeAtMm !== null && (
          <g>
            <circle cx={x(freeAtMm)} cy={y(0)} r="3" className="free" />
            <text x={Math.min(x(freeAtMm) + 4, width)} y={y(0) - 6} textAnchor={x(freeAtMm) + 60 > width ? "end" : "start"}>
              free at {freeAtMm.toFixed(2)}
            </text>
          </g>
        )}
        <path d={`M${left} ${y(0)}H${width}`} className="axis" />
        <text x={left - 4} y="9" textAnchor="end">
          N
        </text>
        <text x={width} y={height - 2} textAnchor="end" className="faint">
          travel along the path [mm]
        </text>
      </svg>
      <figcaption className="num">
        withdrawal <b>{told}</b> of {forces.material}
        {locksFromFriction !== null && `; locks itself from a friction of ${locksFromFriction.toFixed(1)}`}
      </figcaption>
    </figure>
  );
}

/** Peak stress as a share of the proof stress, against the limit. */
function StressBar({ forces, findings }: { readonly forces: ForcesTold; readonly findings: readonly PlainFinding[] }): ReactElement {
  const limit = limitOf(findings, "arm-stress-share") ?? 1;
  const { stressShare, stressMpa, proofMpa, stressFromRootMm } = forces;
  const over = stressShare.to > limit;
  const { width, x, ticks } = stressFrame(stressShare, limit);
  return (
    <figure>
      <svg viewBox={`0 0 ${width} 26`} className="stressbar num" role="img" aria-label={`Peak stress ${rangeText({ from: 100 * stressShare.from, to: 100 * stressShare.to }, 0)} percent of the proof stress`} data-over={over}>
        <path d={`M${x(0)} 8H${width}`} className="grid" />
        <rect x={x(stressShare.from)} y="4" width={Math.max(3, x(stressShare.to) - x(stressShare.from))} height="8" className={over ? "toomuch" : "range"} />
        <path d={`M${x(limit)} 0V16`} className="line" />
        {ticks.map((share) => (
          <text key={share} x={x(share)} y="25" textAnchor={share === 0 ? "start" : "middle"}>
            {Math.round(100 * share)} %
          </text>
        ))}
      </svg>
      <figcaption className="num">
        peak stress <b>{rangeText(stressMpa, 0)} MPa</b> of {rangeText(proofMpa, 0)} proof, {stressFromRootMm.toFixed(1)} mm from the origin
      </figcaption>
    </figure>
  );
}
