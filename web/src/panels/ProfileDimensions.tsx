import type { ReactElement } from "react";
import { degreesText, lengthText, type UnitChoice } from "../values/units";
import type { Profile } from "../wire/types";
import { HEIGHT, type ProfileFrame, WIDTH } from "./profile-frame";

/** A depth below this is drawn as a touch, without a dimension line [mm]. */
const TOUCH_MM = 0.005;

interface Props {
  readonly profile: Profile;
  readonly frame: ProfileFrame;
  readonly units: UnitChoice;
  /** The depth of the section and the depth to the nearest free line are both shown where they differ by more than this [mm]. */
  readonly shallowMm: number;
}

/** The dimensions of the section, with oblique ticks as on a workshop drawing. Every figure is the server's. */
export function Dimensions(props: Props): ReactElement {
  const { profile, frame } = props;
  const { x, y } = frame;
  const { place, surveyLine, convergenceDeg } = profile;
  return (
    <g className="dims num">
      {surveyLine && <circle cx={x(surveyLine[0])} cy={y(surveyLine[1])} r="3" />}
      <circle cx={x(place[0])} cy={y(place[1])} r="3.2" className="brass" />
      <Depth {...props} />
      <Below {...props} />
      {convergenceDeg !== null && (
        <text x={Math.max(30, x(place[0]) - 12)} y={y(place[1]) + 4} textAnchor="end">
          {degreesText(convergenceDeg, 0)}
        </text>
      )}
    </g>
  );
}

/** The gap from the place to the rod, below it. */
function Depth({ profile, frame, units, shallowMm }: Props): ReactElement {
  const { x, y } = frame;
  const { place, rod, depthMm, depthInSectionMm } = profile;
  const [left, right, at] = [x(place[0]), x(rod.s), y(place[1])];
  const line = Math.min(at + 26, HEIGHT - 22);
  const short = units === "in" ? "in" : "mm";
  const two = Math.abs(depthInSectionMm - depthMm) > shallowMm;
  const touch = depthInSectionMm < TOUCH_MM;
  return (
    <>
      {!touch && (
        <>
          <path d={`M${left} ${at + 5}V${line + 4}M${right} ${at + 5}V${line + 4}`} className="witness" />
          <path d={`M${left - 8} ${line}H${right + 8}${tick(left, line)}${tick(right, line)}`} className="measure" />
        </>
      )}
      <text x={right + 13} y={line + 4}>
        {touch ? "no undercut" : lengthText(two ? depthInSectionMm : depthMm, two ? short : units)}
      </text>
      {two && (
        <text x={right + 13} y={line + 18} className="faint">
          in this section; nearest {lengthText(depthMm, short)}
        </text>
      )}
    </>
  );
}

/** How far the place lies below the survey line, along the axis, right of the rod. */
function Below({ profile, frame, units }: Props): ReactElement | null {
  const { x, y, shankMm } = frame;
  const { place, rod, surveyLine, belowSurveyLineMm } = profile;
  if (!surveyLine) return null;
  const [top, foot] = [y(surveyLine[1]), y(place[1])];
  const clear = x(rod.s + shankMm) + 10;
  const line = Math.min(clear + 8, WIDTH - 92);
  const room = foot - top > 15 && belowSurveyLineMm !== null;
  return (
    <>
      <path d={`M${x(surveyLine[0]) + 5} ${top}H${line + 6}`} className="witness" />
      <text x={line + 8} y={top - 4}>
        survey line
      </text>
      {room && (
        <>
          <path d={`M${x(place[0]) + 6} ${foot}H${line + 6}`} className="witness" />
          <path d={`M${line} ${top - 6}V${foot + 6}${tick(line, top)}${tick(line, foot)}`} className="measure" />
          <text x={line + 8} y={(top + foot) / 2 + 6}>
            {lengthText(belowSurveyLineMm, units === "in" ? "in" : "mm", 1)} below
          </text>
        </>
      )}
    </>
  );
}

const tick = (x: number, y: number): string => `M${x - 3} ${y + 3}L${x + 3} ${y - 3}`;
