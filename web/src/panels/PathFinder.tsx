import { type ReactElement, useState } from "react";
import { type Tilt, tilt } from "../values/tilt";
import { toothText, worded } from "../values/tooth-number";
import { degreesText } from "../values/units";
import { type Change, type Factor, FACTORS, type PathFound, type PathTilt } from "../wire/path";
import type { ShadedBy } from "./TiltShading";
import { useBench } from "./use-bench";

const WORDS: Readonly<Record<ShadedBy, string>> = {
  all: "all factors",
  guiding: "guiding planes",
  retention: "retention",
  interference: "what is in the way",
  appearance: "what shows",
  tilt: "the tilt itself",
};

const SHOWN = 4;
/** A tilt smaller than this is the reference orientation: the refinement ends there [degrees]. */
const LEAST_DEG = 0.1;
/** A sideways shift below this is none [mm]. */
const LEAST_SHIFT_MM = 0.05;

const tiltOf = ({ tilt: at }: PathTilt): Tilt => tilt(at.anteriorDeg, at.rightDeg);

function Row(props: { readonly name: string; readonly at: PathTilt; readonly take: (to: Tilt) => void }): ReactElement {
  const { name, at, take } = props;
  return (
    <tr>
      <th scope="row">
        <button className="quiet" onClick={() => take(tiltOf(at))} title="Set the cast at this tilt">
          {name}
        </button>
      </th>
      <td className="num">{degreesText(at.tilt.anteriorDeg)}</td>
      <td className="num">{degreesText(at.tilt.rightDeg)}</td>
      <td className="num">{at.worth.toFixed(2)}</td>
    </tr>
  );
}

function Changes(props: { readonly word: string; readonly changes: readonly Change[] }): ReactElement {
  const { word, changes } = props;
  const notation = useBench((s) => s.notation);
  const digits = (unit: string): number => (unit === "°" ? 1 : 2);
  return (
    <>
      <h3>
        {changes.length > 0 ? `Against the reference orientation gets ${word}` : `Nothing gets ${word} against the reference orientation.`}
      </h3>
      <ul className="changes">
        {changes.slice(0, SHOWN).map((one) => (
          <li key={one.what}>
            {worded(one.pieces, notation)}: <span className="num">{`${one.from.toFixed(digits(one.unit))} → ${one.to.toFixed(digits(one.unit))} ${one.unit}`}</span>
          </li>
        ))}
        {changes.length > SHOWN && <li className="soft">and {changes.length - SHOWN} more</li>}
      </ul>
    </>
  );
}

/** How the denture leaves along a path, and the room that the open mouth must have for it beyond the denture's own height. */
function WayOut(props: { readonly at: PathTilt; readonly openingMm: number | null }): ReactElement {
  const { at, openingMm } = props;
  const { alongMm, forwardMm, rightMm, roomMm } = at.travel;
  const shift = [
    [Math.abs(forwardMm), forwardMm > 0 ? "to the front" : "to the back"] as const,
    [Math.abs(rightMm), rightMm > 0 ? "to the right" : "to the left"] as const,
  ].filter(([mm]) => mm >= LEAST_SHIFT_MM);
  return (
    <p data-testid="way-out" className={openingMm !== null && roomMm > openingMm ? "note" : "soft"}>
      On the way out at the best tilt nothing touches any more after <span className="num">{alongMm.toFixed(1)} mm</span>
      {shift.length > 0 && <>; it moves {shift.map(([mm, where]) => `${mm.toFixed(1)} mm ${where}`).join(" and ")} meanwhile</>}. It rises{" "}
      <span className="num">{roomMm.toFixed(1)} mm</span> above the occlusal plane, beyond its own height:{" "}
      {openingMm === null ? "the opening of the mouth is not known." : `the mouth opens ${openingMm.toFixed(0)} mm${roomMm > openingMm ? ", which is less" : ""}.`}
    </p>
  );
}

/** What the search for the path found: which factor shades the map, the few tilts worth choosing between, and what the best changes. */
export function PathFinder(props: {
  readonly found: PathFound;
  readonly by: ShadedBy;
  readonly shadeBy: (by: ShadedBy) => void;
  readonly take: (to: Tilt) => void;
}): ReactElement {
  const { found, by, shadeBy, take } = props;
  const openingMm = useBench((s) => s.document?.teeth.chart.mouth?.openingMm ?? null);
  const notation = useBench((s) => s.notation);
  const [open, setOpen] = useState(false);
  const factors: readonly Factor[] = FACTORS;
  return (
    <div className="pathfinder" data-testid="path-found">
      <label className="shadeby">
        shaded by{" "}
        <select value={by} onChange={(event) => shadeBy(event.target.value as ShadedBy)}>
          {(["all", ...factors] as const).map((each) => (
            <option key={each} value={each}>
              {WORDS[each]}
            </option>
          ))}
        </select>
      </label>
      <table>
        <thead>
          <tr>
            <th />
            <th scope="col">anterior</th>
            <th scope="col">right</th>
            <th scope="col">worth</th>
          </tr>
        </thead>
        <tbody>
          <Row name="best" at={found.best} take={take} />
          <Row name="reference" at={found.reference} take={take} />
          {open && found.choices.map((each, i) => <Row key={`${each.tilt.anteriorDeg} ${each.tilt.rightDeg}`} name={`choice ${i + 1}`} at={each} take={take} />)}
        </tbody>
      </table>
      <button className="quiet" onClick={() => setOpen(!open)}>
        {open ? "fewer" : `${found.choices.length} tilts that no other beats`}
      </button>
      {found.best.tilt.totalDeg < LEAST_DEG ? (
        <p data-testid="reference-best">
          Of {found.map.tilts.length.toLocaleString("en")} tilts none offers more than the reference orientation, all factors together. Shade the map by one
          factor to see what a tilt would gain there; pin it to see what it costs.
        </p>
      ) : (
        <>
          <Changes word="better" changes={found.comparison.better} />
          <Changes word="worse" changes={found.comparison.worse} />
        </>
      )}
      <WayOut at={found.best} openingMm={openingMm} />
      {found.neverHeld.map(({ tooth, mostMm }) => (
        <p key={tooth} className="note">
          {toothText(tooth, notation)} has no usable undercut at any tilt (most {mostMm.toFixed(2)} mm): a tilt moves undercuts, it cannot make retention against
          the path of displacement.
        </p>
      ))}
    </div>
  );
}
