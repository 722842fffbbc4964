import type { ReactElement } from "react";
import { LENGTH_UNITS, type LengthUnit } from "../wire/api";
import { degreesText } from "../values/units";
import { useBench, useDesk } from "./use-bench";

/** What was found when the scan was taken in, line by line as a person reads it. */
export function ScanReport(): ReactElement | null {
  const { bench } = useDesk();
  const cast = useBench((s) => s.cast);
  const survey = useBench((s) => s.survey);
  if (!cast) return null;
  const head = survey?.head;
  return (
    <section aria-label="Scan">
      <details open>
        <summary>
          <h2>Scan</h2>
        </summary>
        <ul className="lines">
          {cast.intakeLines.map((line) => (
            <li key={line}>{line}</li>
          ))}
          {cast.frame && (
            <li>
              orientation known within ±{degreesText(cast.frame.upUncertaintyDeg)}, front within ±{degreesText(cast.frame.frontUncertaintyDeg)}
            </li>
          )}
          {head && (
            <li className="num">
              {head.undercutAreaMm2 === undefined || head.undercutVolumeMm3 === undefined
                ? "undercut … measured once the tilt rests"
                : `undercut ${head.undercutAreaMm2.toFixed(0)} mm², ${head.undercutVolumeMm3.toFixed(0)} mm³ · surveyed in ${head.millis.toFixed(0)} ms`}
            </li>
          )}
          {!!head?.hiddenLines && <li>{head.hiddenLines} short or shallow pieces of survey line are counted, not drawn</li>}
          {head?.notes?.map((note) => (
            <li key={note}>{note}</li>
          ))}
        </ul>
        {bench.opening.canChangeUnit && (
          <label className="unitpick">
            the file is written in{" "}
            <select value="" onChange={(event) => void bench.opening.inUnit(event.target.value as LengthUnit)}>
              <option value="" disabled>
                as found
              </option>
              {LENGTH_UNITS.map((unit) => (
                <option key={unit}>{unit}</option>
              ))}
            </select>
          </label>
        )}
      </details>
    </section>
  );
}
