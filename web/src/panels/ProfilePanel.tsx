import type { ReactElement } from "react";
import { lengthText, type UnitChoice } from "../values/units";
import type { CastInfo, Profile } from "../wire/types";
import { HEIGHT, outline, profileFrame, type ProfileFrame, wholeMm, WIDTH } from "./profile-frame";
import { Dimensions } from "./ProfileDimensions";
import { useBench } from "./use-bench";

export function ProfilePanel(): ReactElement {
  const profile = useBench((s) => s.profile);
  const units = useBench((s) => s.units);
  const cast = useBench((s) => s.cast);
  const mark = useBench((s) => s.document?.marks.find((each) => each.id === s.selected) ?? null);
  return (
    <section aria-label="Profile">
      <h2>
        Profile{mark ? ` · mark ${mark.name}` : ""} <span className="right">grid 1 mm</span>
      </h2>
      <svg className="profile" viewBox={`0 0 ${WIDTH} ${HEIGHT}`} role="img" aria-label={profile ? profileWords(profile, units) : "No section yet"}>
        {profile && cast ? (
          <Section profile={profile} units={units} cast={cast} />
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

function Section({ profile, units, cast }: { readonly profile: Profile; readonly units: UnitChoice; readonly cast: CastInfo }): ReactElement {
  const frame = profileFrame(profile, cast.shankRadiusMm);
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
      <Dimensions profile={profile} frame={frame} units={units} shallowMm={cast.shallowMm} />
    </>
  );
}

function Rod({ profile, frame }: { readonly profile: Profile; readonly frame: ProfileFrame }): ReactElement {
  const { x, y, scale, shankMm } = frame;
  const { rod, place, gauge } = profile;
  const foot = gauge ? gauge.point[1] : place[1];
  const lip = 0.3 * scale;
  return (
    <g className="rod">
      <path d={`M${x(rod.s)} ${-10}H${x(rod.s + shankMm)}V${y(foot)}H${x(rod.s)}Z`} />
      <path d={`M${x(rod.s + 0.25)} ${-10}V${y(foot)}`} className="glint" />
      {gauge && <rect x={x(rod.s - gauge.mm)} y={y(foot) - lip / 2} width={(shankMm + 2 * gauge.mm) * scale} height={lip} />}
    </g>
  );
}
