import type { ReactElement } from "react";
import { type KeptPath, tiltTold } from "../state/path-keeping";
import { sameTilt } from "../values/tilt";
import { degreesText, lengthText } from "../values/units";
import { useBench, useDesk } from "./use-bench";

/** The three marks of the chosen tilt, and the way back to a tilt that was kept on this scan or on another of the same cast. */
export function TripodPanel(): ReactElement | null {
  const { bench } = useDesk();
  const { paths } = bench;
  const document = useBench((s) => s.document);
  const framed = useBench((s) => !!s.cast?.frame);
  const units = useBench((s) => s.units);
  const picking = useBench((s) => s.picking);
  useBench((s) => s.keptPaths);
  useBench((s) => s.casts);
  if (!document || !framed) return null;
  const { tripod } = document;
  const moved = tripod?.tilt && !sameTilt(tiltTold(tripod.tilt), document.tilt) ? tiltTold(tripod.tilt) : null;
  const others = tripod ? [] : paths.elsewhere();
  return (
    <section aria-label="Tripod marks" className="tripod">
      <h2>Tripod marks</h2>
      {tripod && (
        <>
          <table className="num" aria-label="Distances between the marks, for dividers">
            <tbody>
              {["1–2", "2–3", "3–1"].map((pair, i) => (
                <tr key={pair}>
                  <th scope="row">{pair}</th>
                  <td>{lengthText(tripod.distancesMm[i]!, units, 1)}</td>
                </tr>
              ))}
            </tbody>
          </table>
          <p className="soft line" data-testid="tripod-error">
            Gives the path back within ± <span className="num">{tripod.axisErrorDeg.toFixed(2)}°</span>, 95 times in 100, where marks are picked to{" "}
            <span className="num">{tripod.pickingErrorMm.toFixed(1)} mm</span>. Drag a mark that lies where the mouth will be prepared.
          </p>
        </>
      )}
      {moved && (
        <button className="main" onClick={() => void paths.putBack()} data-testid="put-back">
          put it back where it was{" "}
          <span className="num soft">
            {degreesText(moved.anterior)} / {degreesText(moved.right)}
          </span>
        </button>
      )}
      <div className="row">
        {(!tripod || moved) && (
          <button className="quiet" onClick={() => void paths.propose()} title="Three places at one height that a rod touches, from which this tilt is found again most surely" data-testid="set-tripod">
            {tripod ? "set them anew" : "set tripod marks"}
          </button>
        )}
        {tripod && (
          <button className="quiet" onClick={() => paths.remove()}>
            remove
          </button>
        )}
      </div>
      {picking && (
        <p className="note" role="status" data-testid="picking">
          Click the three marks of {picking.kept.castName} on this scan, in any order: {picking.picked.length} of 3.{" "}
          <button className="quiet" onClick={() => paths.stopPicking()}>
            stop
          </button>
        </p>
      )}
      {!picking && others.length > 0 && (
        <>
          <h3>Put it back where it was</h3>
          <ul>
            {others.map((kept) => (
              <Elsewhere key={`${kept.castId} ${kept.castName}`} kept={kept} />
            ))}
          </ul>
        </>
      )}
    </section>
  );
}

function Elsewhere({ kept }: { readonly kept: KeptPath }): ReactElement | null {
  const { paths } = useDesk().bench;
  const open = paths.isOpen(kept);
  if (!open && !kept.tripod) return null;
  return (
    <li>
      <span>
        as {kept.castName}{" "}
        <span className="num soft">
          {degreesText(kept.tilt.anterior)} / {degreesText(kept.tilt.right)}
        </span>
      </span>
      <span className="row">
        {open && (
          <button onClick={() => void paths.layOn(kept)} title="Lays this scan on that one and carries its path over">
            lay the scans
          </button>
        )}
        {kept.tripod && (
          <button onClick={() => paths.pickMarks(kept)} title="Finds the path from its three marks, picked on this scan">
            pick its marks
          </button>
        )}
      </span>
    </li>
  );
}
