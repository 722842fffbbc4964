import { type ReactElement, useState } from "react";
import { toothText } from "../values/tooth-number";
import { degreesText, lengthText, type UnitChoice } from "../values/units";
import type { StripSection } from "../wire/strip";
import type { CastInfo } from "../wire/types";
import { stripFrame, type StripFrame, stripPath, stripScale } from "./strip-frame";
import { useBench } from "./use-bench";

const SMALL = { width: 96, height: 74 };
const LARGE = { width: 330, height: 250 };

/** What the strip goes by: a gap up to `freeMm` is a touch; the near half of the rod is drawn. */
type StripLimits = Pick<CastInfo, "freeMm" | "shankRadiusMm">;

const keyOf = ({ tooth, surface }: StripSection): string => `${tooth} ${surface}`;

/** Every surface that a surveyor looks at first, each with the rod against it; live while the dot moves. */
export function ParallelStrip(): ReactElement {
  const strip = useBench((s) => s.strip);
  const teeth = useBench((s) => s.teeth);
  const units = useBench((s) => s.units);
  const notation = useBench((s) => s.notation);
  const cast = useBench((s) => s.cast);
  const [chosen, setChosen] = useState<string | null>(null);
  // Its place is kept while it is empty: the cast must not move under a hand that is about to click.
  if (strip.length === 0 || !cast) {
    return (
      <section className="strip" aria-label="Parallel strip">
        <p className="soft">{teeth ? "No proximal surface next to a space." : "Proximal surfaces next to a space, once the teeth are known."}</p>
      </section>
    );
  }
  const scale = stripScale(strip, SMALL.width, SMALL.height);
  const large = strip.find((each) => keyOf(each) === chosen);
  const short = units === "in" ? "in" : "mm";
  return (
    <section className="strip" aria-label="Parallel strip">
      {large && (
        <figure className="striplarge" aria-label={`Section ${toothText(large.tooth, notation)} ${large.surface}`}>
          <button className="icon small" aria-label="Put the section away" onClick={() => setChosen(null)}>
            ×
          </button>
          <figcaption className="num">
            <b>
              {toothText(large.tooth, notation)} {large.surface}
            </b>
            <Facts section={large} units={units} limits={cast} />
          </figcaption>
          <Drawing section={large} scale={stripScale([large], LARGE.width, LARGE.height)} paper={LARGE} limits={cast} grid />
        </figure>
      )}
      <div className="stripline">
        {strip.map((section) => {
          const key = keyOf(section);
          const name = `${toothText(section.tooth, notation)} ${section.surface}`;
          const words = smallWords(section, short, cast);
          return (
            <button
              key={key}
              className={section.surface === "facial" ? "stripone facial" : "stripone"}
              aria-pressed={chosen === key}
              aria-label={`${name}: ${words.join(", ")}`}
              data-section={key}
              data-gap={section.gapMm}
              data-angle={section.plane?.angleDeg}
              onClick={() => setChosen(chosen === key ? null : key)}
            >
              <b>{name}</b>
              <Drawing section={section} scale={scale} paper={SMALL} limits={cast} />
              <span className="num">{words[0]}</span>
              <span className="num soft">{words[1] ?? "\u00a0"}</span>
            </button>
          );
        })}
      </div>
    </section>
  );
}

const gapWords = ({ gapMm }: StripSection, units: UnitChoice, { freeMm }: StripLimits): string => (gapMm < freeMm ? "no gap" : `gap ${lengthText(gapMm, units)}`);

function smallWords(section: StripSection, units: UnitChoice, limits: StripLimits): string[] {
  if (section.plane) return [degreesText(section.plane.angleDeg), gapWords(section, units, limits)];
  if (section.surface !== "facial") return ["no room", gapWords(section, units, limits)];
  return section.gapMm < limits.freeMm ? ["none"] : [lengthText(section.gapMm, units), `${lengthText(section.belowMm, units, 1)} below`];
}

function Facts({ section, units, limits }: { readonly section: StripSection; readonly units: UnitChoice; readonly limits: StripLimits }): ReactElement {
  const { plane, surface, gapMm, belowMm } = section;
  return (
    <>
      {plane && (
        <span>
          {degreesText(plane.angleDeg)} to the path over {lengthText(plane.heightMm, units, 1)}, a plane takes {lengthText(plane.enamelMm, units)}
        </span>
      )}
      {!plane && surface !== "facial" && <span>the tooth ends before a guiding plane has room</span>}
      <span>
        {gapMm < limits.freeMm
          ? "no undercut in this section"
          : `${lengthText(gapMm, units)} from the rod, ${lengthText(belowMm, units, 1)} below where it touches`}
      </span>
    </>
  );
}

interface DrawingProps {
  readonly section: StripSection;
  readonly scale: number;
  readonly paper: { readonly width: number; readonly height: number };
  readonly limits: StripLimits;
  readonly grid?: boolean;
}

function Drawing({ section, scale, paper: { width, height }, limits, grid = false }: DrawingProps): ReactElement {
  const frame: StripFrame = stripFrame(section, scale, width, height);
  const { x, y } = frame;
  const { line, rod, foot, contact, deepest, gapMm } = section;
  const [first, last] = [line[0]!, line.at(-1)!];
  const path = stripPath(line, frame);
  const end = Math.min(y(foot), height);
  return (
    <svg viewBox={`0 0 ${width} ${height}`} className="stripdrawing" aria-hidden="true">
      <path d={`${path}L${-width} ${y(last[1]).toFixed(1)}L${-width} ${y(first[1]).toFixed(1)}Z`} className="tooth" />
      {grid && (
        <g className="grid">
          {Array.from({ length: Math.ceil(width / scale) }, (_, k) => (
            <path key={k} d={`M${x(rod) - (k - 1) * scale} 0V${height}`} />
          ))}
        </g>
      )}
      <path d={path} className="outline" />
      <rect x={x(rod)} y={-2} width={Math.max(3, limits.shankRadiusMm * scale)} height={end + 2} className="rod" />
      {gapMm >= limits.freeMm && (
        <>
          <path d={`M${x(deepest[0])} ${y(deepest[1])}H${x(rod)}`} className="gap" />
          <circle cx={x(contact[0])} cy={y(contact[1])} r="2" className="contact" />
        </>
      )}
    </svg>
  );
}
