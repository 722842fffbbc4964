import { type ReactElement, useEffect, useMemo, useRef } from "react";
import { type Plan, planOf } from "../values/plan";
import { relief, reliefWindow } from "../values/relief";
import type { Jaw } from "../values/tilt";
import { toothText } from "../values/tooth-number";
import type { ScanVec } from "../values/vec";
import type { ArchFrame, CastInfo, TeethInfo } from "../wire/types";
import { type ChartPlace, chartPlaces } from "./chart-places";
import { useBench, useDesk } from "./use-bench";

const WIDTH_PX = 320;
const MARGIN_MM = 7;

/**
 * The arch from above, drawn from the scan itself. A click on a number says that the tooth is missing, or there after all; a click
 * on a tooth chooses it.
 */
export function ArchChart({ cast, jaw, frame }: { readonly cast: CastInfo; readonly jaw: Jaw; readonly frame: ArchFrame }): ReactElement | null {
  const mesh = useBench((s) => s.mesh);
  const teeth = useBench((s) => s.teeth);
  const said = useBench((s) => s.document?.teeth ?? null);
  const plan = useMemo(() => planOf(frame, jaw), [frame, jaw]);
  const window = useMemo(() => (mesh ? reliefWindow(mesh.positions, plan, WIDTH_PX, MARGIN_MM) : null), [mesh, plan]);
  const canvas = useRef<HTMLCanvasElement>(null);
  useEffect(() => {
    const pen = canvas.current?.getContext("2d");
    if (!pen || !mesh || !window) return;
    pen.putImageData(new ImageData(relief(mesh.positions, mesh.corners, plan, window), window.width, window.height), 0, 0);
  }, [mesh, plan, window]);
  const places = useMemo(() => (window ? chartPlaces(jaw, plan, window, teeth) : []), [jaw, plan, window, teeth]);
  if (!window || !said) return null;
  const px = ([x, y]: readonly [number, number]): readonly [number, number] => [(x - window.left) / window.grain, (window.top - y) / window.grain];
  return (
    <div className="archchart">
      <canvas ref={canvas} width={window.width} height={window.height} aria-hidden="true" />
      <svg viewBox={`0 0 ${window.width} ${window.height}`} role="group" aria-label={`Chart of the ${jaw} arch of ${cast.name}`}>
        {teeth?.spaces.map(({ crest, missing }) => (
          <path key={missing.join(" ")} className="crest" d={path(crest, plan, px)} />
        ))}
        {places.map((place) => (
          <Place key={place.tooth} place={place} missing={said.missing.includes(place.tooth)} teeth={teeth} plan={plan} px={px} />
        ))}
        <text x="4" y={window.height - 5} className="side">
          right
        </text>
        <text x={window.width - 4} y={window.height - 5} className="side" textAnchor="end">
          left
        </text>
      </svg>
    </div>
  );
}

interface PlaceProps {
  readonly place: ChartPlace;
  readonly missing: boolean;
  readonly teeth: TeethInfo | null;
  readonly plan: Plan;
  readonly px: (at: readonly [number, number]) => readonly [number, number];
}

function Place({ place, missing, teeth, plan, px }: PlaceProps): ReactElement {
  const { bench } = useDesk();
  const chosen = useBench((s) => s.tooth === place.tooth);
  const notation = useBench((s) => s.notation);
  const found = teeth?.teeth.find(({ tooth }) => tooth === place.tooth);
  const [x, y] = px(place.label);
  const [cx, cy] = px(place.at);
  const name = toothText(place.tooth, notation);
  const toggle = (): void => bench.toggleMissing(place.tooth);
  const gap = teeth?.spaces.some((space) => space.missing.includes(place.tooth)) ?? false;
  const state = missing ? "missing" : found ? "found" : gap ? "gap" : "open";
  return (
    <g className={`place ${state}${chosen ? " on" : ""}`} data-fdi={place.tooth}>
      {found ? (
        <path className="outline" d={`${path(found.margin, plan, px)}Z`} onClick={() => bench.chooseTooth(place.tooth)}>
          <title>{`Choose ${name}`}</title>
        </path>
      ) : (
        <circle className="ghost" cx={cx} cy={cy} r="7" onClick={() => bench.chooseTooth(place.tooth)}>
          <title>{`Choose the place of ${name}`}</title>
        </circle>
      )}
      <g
        className="number"
        role="checkbox"
        aria-checked={missing}
        aria-label={`${name} missing`}
        tabIndex={0}
        onClick={toggle}
        onKeyDown={(event) => {
          if (event.key === "Enter" || event.key === " ") {
            event.preventDefault();
            toggle();
          }
        }}
      >
        <title>{missing ? `${name} is missing; click: it is there` : `Click: ${name} is missing`}</title>
        <rect x={x - 12} y={y - 9} width="24" height="17" rx="3" />
        <text x={x} y={y + 4} textAnchor="middle">
          {name}
        </text>
        {missing && <path d={`M${x - 8} ${y + 5}L${x + 8} ${y - 5}`} className="struck" />}
      </g>
    </g>
  );
}

function path(points: readonly ScanVec[], plan: Plan, px: PlaceProps["px"]): string {
  return points.map((point, i) => `${i === 0 ? "M" : "L"}${px(plan.at(point)).map((v) => v.toFixed(1)).join(" ")}`).join("");
}

