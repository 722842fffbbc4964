import type { ReactElement } from "react";
import { degreesText, lengthText, type UnitChoice } from "../values/units";
import type { Profile } from "../wire/types";
import { outline, profileFrame, type ProfileFrame, wholeMm } from "./profile-frame";
import { useBench } from "./use-bench";

const WIDTH = 332;
const HEIGHT = 268;
const SHANK_MM = 1;
/** u and u_d are both shown where they differ by more than this (DESIGN 3.1) [mm]. */
const BOTH_MM = 0.05;

export function ProfilePanel(): ReactElement {
  const profile = useBench((s) => s.profile);
  const units = useBench((s) => s.units);
  const mark = useBench((s) => s.document?.marks.find((each) => each.id === s.selected) ?? null);
  return (
    <section aria-label="Profile">
      <h2>
        Profile{mark ? ` · mark ${mark.name}` : ""} <span className="right">grid 1 mm</span>
      </h2>
      <svg className="profile" viewBox={`0 0 ${WIDTH} ${HEIGHT}`} role="img" aria-label={profile ? profileWords(profile, units) : "No section yet"}>
        {profile ? (
          <Section profile={profile} units={units} />
        ) : (
          <text x={WIDTH / 2} y={HEIGHT / 2} textAnchor="middle" className="faint">
            bring the rod to the cast
          </text>
        )}
      </svg>
    </section>
  );
}

function profileWords(profile: Profile, units: UnitChoice): string {
  return `Section: depth ${lengthText(profile.depthMm, units)}`;
}

function Section({ profile, units }: { readonly profile: Profile; readonly units: UnitChoice }): ReactElement {
  const frame = profileFrame(profile, WIDTH, HEIGHT);
  const { x, y, scale, sFrom, hTo } = frame;
  const fill = profile.polylines.map((line) => outline(line, frame, true)).join("");
  return (
    <>
      <path d={fill} className="tooth" fillRule="evenodd" />
      <g className="grid">
        {wholeMm(sFrom, sFrom + WIDTH / scale).map((s) => (
          <path key={s} d={`M${x(s)} 0V${HEIGHT}`} />
        ))}
        {wholeMm(hTo - HEIGHT / scale, hTo).map((h) => (
          <path key={h} d={`M0 ${y(h)}H${WIDTH}`} />
        ))}
      </g>
      {profile.polylines.map((line, i) => (
        <path key={i} d={outline(line, frame, false)} className="outline" />
      ))}
      <Rod profile={profile} frame={frame} />
      <Dimensions profile={profile} frame={frame} units={units} />
    </>
  );
}

function Rod({ profile, frame }: { readonly profile: Profile; readonly frame: ProfileFrame }): ReactElement {
  const { x, y, scale } = frame;
  const { rod, place, gauge } = profile;
  const foot = gauge ? gauge.point[1] : place[1];
  const lip = 0.3 * scale;
  return (
    <g className="rod">
      <path d={`M${x(rod.s)} ${-10}H${x(rod.s + SHANK_MM)}V${y(foot)}H${x(rod.s)}Z`} />
      <path d={`M${x(rod.s + 0.25)} ${-10}V${y(foot)}`} className="glint" />
      {gauge && <rect x={x(rod.s - gauge.mm)} y={y(foot) - lip / 2} width={(SHANK_MM + 2 * gauge.mm) * scale} height={lip} />}
    </g>
  );
}

function Dimensions({ profile, frame, units }: { readonly profile: Profile; readonly frame: ProfileFrame; readonly units: UnitChoice }): ReactElement {
  const { x, y } = frame;
  const { place, rod, surveyLine, depthMm, depthInSectionMm: inSection, belowSurveyLineMm: below, convergenceDeg } = profile;
  const px = x(place[0]);
  const py = y(place[1]);
  const words = Math.min(x(rod.s + SHANK_MM) + 30, WIDTH - 118);
  const under = Math.min(py + 24, HEIGHT - 8);
  const two = Math.abs(inSection - depthMm) > BOTH_MM;
  return (
    <g className="dims num">
      {surveyLine && (
        <>
          <circle cx={x(surveyLine[0])} cy={y(surveyLine[1])} r="3" />
          <text x={words} y={y(surveyLine[1]) - 5}>survey line</text>
        </>
      )}
      <circle cx={px} cy={py} r="3" className="brass" />
      <path d={`M${px} ${py + 4}V${under + 3}M${x(rod.s)} ${py + 4}V${under + 3}`} className="witness" />
      <path d={`M${px} ${under}H${x(rod.s)}`} className="measure" />
      <path d={`M${px - 3} ${under + 3}L${px + 3} ${under - 3}M${x(rod.s) - 3} ${under + 3}L${x(rod.s) + 3} ${under - 3}`} className="measure" />
      <text x={x(rod.s) + 8} y={under + 4}>
        {lengthText(depthMm, units)}
        {two ? ` (${lengthText(inSection, units === "in" ? "in" : "mm")} in this section)` : ""}
      </text>
      {surveyLine && below !== null && Math.abs(y(surveyLine[1]) - py) > 14 && (
        <>
          <path d={`M${x(surveyLine[0]) + 5} ${y(surveyLine[1])}H${words - 4}M${px + 6} ${py}H${words - 4}`} className="witness" />
          <path d={`M${words - 9} ${y(surveyLine[1])}V${py}`} className="measure" />
          <path d={`M${words - 12} ${y(surveyLine[1]) + 3}l6 -6M${words - 12} ${py + 3}l6 -6`} className="measure" />
          <text x={words} y={(y(surveyLine[1]) + py) / 2 + 4}>{lengthText(below, units === "in" ? "in" : "mm", 1)} below</text>
        </>
      )}
      {convergenceDeg !== null && (
        <text x={Math.max(8, px - 12)} y={py - 8} textAnchor="end">
          {degreesText(convergenceDeg, 0)}
        </text>
      )}
    </g>
  );
}
