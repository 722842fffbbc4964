import { type ReactElement, useState } from "react";
import { action } from "../state/actions";
import { type Jaw, type Tilt, totalTilt } from "../values/tilt";
import { type Degrees, degrees, degreesText } from "../values/units";
import { Icon } from "./Icons";
import { InTheWay } from "./InTheWay";
import { PathFinder } from "./PathFinder";
import { TiltMap } from "./TiltMap";
import { TiltNumbers } from "./TiltNumbers";
import type { ShadedBy } from "./TiltShading";
import { useAction, useBench, useDesk } from "./use-bench";
import { useSearch } from "./use-search";

function Angle(props: { readonly label: string; readonly value: Degrees; readonly disabled?: boolean; readonly set: (value: Degrees) => void }): ReactElement {
  const { label, value, disabled = false, set } = props;
  // What is being written; null while the field shows the tilt itself. Writing that is no number is given up.
  const [draft, setDraft] = useState<string | null>(null);
  const commit = (): void => {
    const wanted = Number(draft?.replace("−", "-").replace(",", "."));
    if (draft?.trim() && Number.isFinite(wanted)) set(degrees(wanted));
    setDraft(null);
  };
  return (
    <label className={disabled ? "angle off" : "angle"}>
      <span>{label}</span>
      <input
        inputMode="decimal"
        value={draft ?? String(Number(value.toFixed(2)))}
        disabled={disabled}
        onChange={(event) => setDraft(event.target.value)}
        onBlur={commit}
        onKeyDown={(event) => {
          if (event.key === "Enter") commit();
        }}
      />
      <span>°</span>
    </label>
  );
}

export function TiltPanel(): ReactElement | null {
  const { bench } = useDesk();
  const cast = useBench((s) => s.cast);
  const document = useBench((s) => s.document);
  const note = useBench((s) => s.note);
  const reference = useAction(action("tilt.reference"));
  const teeth = useBench((s) => s.teeth);
  const { search, otherwise, look, stop } = useSearch();
  const [by, setBy] = useState<ShadedBy>("all");
  const [pointed, setPointed] = useState<Tilt | null>(null);
  if (!cast || !document) return null;
  const best = search?.found?.best.tilt;
  const { tilt, pastLimit } = document;
  const total = totalTilt(tilt);
  const jaw = (value: Jaw): void => bench.setFrame({ ...document.frame, jaw: value });
  return (
    <section aria-label="Tilt">
      <h2>Tilt</h2>
      {cast.frame ? (
        <>
          <TiltMap map={search?.map ?? null} by={by} best={best ? { anterior: best.anteriorDeg, right: best.rightDeg } : null} point={setPointed} />
          {search?.map && <TiltNumbers map={search.map} at={pointed ?? tilt} pointed={pointed !== null} />}
          <div className="angles">
            <Angle label="anterior" value={tilt.anterior} set={(anterior) => bench.setTilt({ ...tilt, anterior })} />
            <Angle label="right" value={tilt.right} disabled={!cast.jaw} set={(right) => bench.setTilt({ ...tilt, right })} />
          </div>
          <p className={total > cast.warnTiltDeg ? "total warn num" : "total num"} data-testid="total">
            total {degreesText(total)}
            {total > cast.warnTiltDeg
              ? ` · steep: more than ${cast.warnTiltDeg}°`
              : total > cast.noteTiltDeg
                ? ` · more than ${cast.noteTiltDeg}°`
                : ""}
          </p>
          <button className="quiet" onClick={reference.run} title={reference.hint}>
            <Icon name="level" /> reference (0, 0)
          </button>
          {teeth && teeth.teeth.length > 0 && !search && (
            <button className="quiet" onClick={look} data-testid="try-tilts">
              try every tilt
            </button>
          )}
          {search?.running && (
            <div className="searching" data-testid="searching">
              <span>{search.running.what} …</span>
              <progress max={1} value={search.running.share} aria-label="How far the search has come" />
              <button onClick={stop}>stop</button>
            </div>
          )}
          {search?.found && <InTheWay otherwise={otherwise} again={look} />}
          {search?.found && <PathFinder found={search.found} by={by} shadeBy={setBy} take={(to) => bench.jumpTo(to)} />}
          <label className="tick">
            <input type="checkbox" checked={pastLimit} onChange={(event) => bench.allowPastLimit(event.target.checked)} />
            allow more than {cast.limitTiltDeg}°
          </label>
        </>
      ) : (
        <p className="soft">The cast has no orientation yet.</p>
      )}
      {!cast.jaw && (
        <div className="jaw" role="group" aria-label="Which jaw">
          <span>Which jaw? Right and left need it.</span>
          <button onClick={() => jaw("upper")}>upper</button>
          <button onClick={() => jaw("lower")}>lower</button>
        </div>
      )}
      {note && (
        <p className="note" role="status">
          {note}
        </p>
      )}
    </section>
  );
}
