import type { ReactElement } from "react";
import { type Band, bands, HATCH_LINE_PX, HATCH_STEP_PX, LIGHT } from "../values/look";
import { ROOM_BANDS, roomText } from "../values/room";
import { lengthText, type UnitChoice } from "../values/units";
import { PlanLegend } from "./PlanLegend";
import { useBench } from "./use-bench";

/** From–to of a band in words, in the units chosen. */
export function bandText(all: readonly Band[], i: number, units: UnitChoice): string {
  const text = (size: number): string => (units === "in" ? (size / 25).toFixed(3) : size.toFixed(2));
  const band = all[i]!;
  const next = all[i + 1];
  return next ? `${text(band.fromMm)}–${text(next.fromMm)}` : `over ${text(band.fromMm)}`;
}

/** A patch of a band with its hatching, as the shader draws it. */
export function Swatch({ band }: { readonly band: Band }): ReactElement {
  const id = `hatch-${band.hatch}-${band.fill.slice(1)}`;
  const turn = band.hatch === "falling" ? -45 : 45;
  return (
    <svg width="22" height="13" aria-hidden="true">
      <defs>
        <pattern id={id} width={HATCH_STEP_PX} height={HATCH_STEP_PX} patternUnits="userSpaceOnUse" patternTransform={`rotate(${turn})`}>
          <path d={`M0 0V${HATCH_STEP_PX}`} stroke={band.line} strokeWidth={2 * HATCH_LINE_PX} />
          {band.hatch === "crossed" && <path d={`M0 0H${HATCH_STEP_PX}`} stroke={band.line} strokeWidth={2 * HATCH_LINE_PX} />}
        </pattern>
      </defs>
      <rect width="26" height="13" fill={band.fill} />
      {band.hatch !== "plain" && <rect width="26" height="13" fill={`url(#${id})`} />}
      <rect x="0.5" y="0.5" width="21" height="12" fill="none" stroke="var(--soft)" strokeOpacity="0.7" />
    </svg>
  );
}

/** A line as it is drawn: on plaster, which is light in both looks. */
function LineSwatch({ ink }: { readonly ink: "lead" | "brassShade" }): ReactElement {
  return (
    <svg width="22" height="13" aria-hidden="true">
      <rect width="22" height="13" fill={LIGHT.plaster} />
      <path d="M0 6.5H22" stroke={LIGHT[ink]} strokeWidth={ink === "lead" ? 2.4 : 1.3} />
    </svg>
  );
}

/** Where no gauge reaches: the shader's stipple over a band. */
function StippleSwatch({ band }: { readonly band: Band }): ReactElement {
  return (
    <svg width="22" height="13" aria-hidden="true">
      <defs>
        <pattern id="stipple" width="5" height="5" patternUnits="userSpaceOnUse">
          <circle cx="2.5" cy="2.5" r="1" fill={LIGHT.lead} />
        </pattern>
      </defs>
      <rect width="22" height="13" fill={band.fill} />
      <rect width="22" height="13" fill="url(#stipple)" />
    </svg>
  );
}

/** What the colours mean while they tell the room to the opposing teeth. */
function RoomLegend(): ReactElement {
  return (
    <div className="legend num" aria-label="Legend">
      <span className="soft">room to the opposing teeth, mm</span>
      {ROOM_BANDS.map((band) => (
        <span key={band.belowMm}>
          <Swatch band={band} /> {roomText(band)}
        </span>
      ))}
      <span>
        <UnknownSwatch /> not known
      </span>
    </div>
  );
}

/** Where the opposing scan does not cover the cast: the shader's sparse dots. */
function UnknownSwatch(): ReactElement {
  return (
    <svg width="22" height="13" aria-hidden="true">
      <rect width="22" height="13" fill={LIGHT.plaster} />
      {[4, 12, 20].map((x) => (
        <circle key={x} cx={x} cy={6.5} r="1" fill={LIGHT.lead} fillOpacity="0.5" />
      ))}
      <rect x="0.5" y="0.5" width="21" height="12" fill="none" stroke="var(--soft)" strokeOpacity="0.7" />
    </svg>
  );
}

export function Legend(): ReactElement | null {
  const cast = useBench((s) => s.cast);
  const units = useBench((s) => s.units);
  const exact = useBench((s) => (s.survey?.head.exact ?? true) && !s.coarse);
  const plan = useBench((s) => s.page === "plan" && !s.beside && s.planned?.sheet != null);
  const shading = useBench((s) => s.shading);
  if (!cast) return null;
  if (plan) return <PlanLegend />;
  if (shading === "room") return <RoomLegend />;
  const all = bands(cast.gaugesMm, cast.shallowMm);
  return (
    <div className="legend num" aria-label="Legend">
      <span className="soft">undercut, {units === "in" ? "in (nominal)" : "mm"}</span>
      {all.map((band, i) => (
        <span key={band.fromMm}>
          <Swatch band={band} /> {bandText(all, i, units)}
        </span>
      ))}
      <span title={`Between neighbours and in embrasures: no upright gauge comes within ${lengthText(cast.shankReachMm, "mm")} of the free line`}>
        <StippleSwatch band={all[0]!} /> no gauge reaches
      </span>
      <span>
        <LineSwatch ink="lead" /> survey line
      </span>
      <span>
        <LineSwatch ink="brassShade" /> gauge curve
      </span>
      {!exact && <span className="doubt">coarser while moving</span>}
    </div>
  );
}
