import type { ReactElement } from "react";
import { lengthText, mm, type UnitChoice } from "../values/units";
import { placesOf, toothText } from "../values/tooth-number";
import { type Fdi, THIRDS, type Zone, type ZoneDepth } from "../wire/types";
import { isGap } from "../state/teething";
import { action } from "../state/actions";
import { useAction, useBench, useDesk } from "./use-bench";

const ROWS = ["facial", "lingual"] as const;
const COLUMNS = ["mesial", "middle", "distal"] as const;

/** The chosen tooth: its number, and its undercut by thirds at this path. */
export function ToothPanel(): ReactElement | null {
  const { bench } = useDesk();
  const tooth = useBench((s) => s.tooth);
  const found = useBench((s) => s.teeth?.teeth.find((each) => each.tooth === s.tooth) ?? null);
  const depths = useBench((s) => s.toothDepths);
  const units = useBench((s) => s.units);
  const gauge = useBench((s) => s.gauge);
  const notation = useBench((s) => s.notation);
  const jaw = useBench((s) => s.cast?.jaw ?? null);
  const moving = useBench((s) => s.survey !== null && !s.survey.head.exact);
  const note = useBench((s) => s.note);
  const missing = useBench((s) => s.document !== null && isGap(tooth, s.document.teeth, s.teeth));
  if (missing) return null;
  if (tooth === null || !found || !jaw) {
    return (
      <section aria-label="Tooth">
        <p className="soft">
          A click on a tooth chooses it; a click where none is outlined adds one; a click on a number says that the tooth is missing.
        </p>
      </section>
    );
  }
  const short = units === "in" ? "in" : "mm";
  const there = depths?.tooth === tooth && !moving ? depths : null;
  return (
    <section aria-label="Tooth" data-tooth={tooth}>
      <h2>
        <label>
          Tooth{" "}
          <select value={tooth} title="Give it another number" onChange={(event) => bench.renumber(tooth, Number(event.target.value))}>
            {placesOf(jaw).map((each) => (
              <option key={each} value={each}>
                {toothText(each, notation)}
              </option>
            ))}
          </select>
        </label>
        <span className="right num">
          {lengthText(found.widthMm, short, 1)} wide · {lengthText(found.facialHeightMm, short, 1)} high
        </span>
      </h2>
      <table className="thirds num">
        <thead>
          <tr>
            <td />
            {COLUMNS.map((column) => (
              <th key={column} scope="col">
                {column}
              </th>
            ))}
          </tr>
        </thead>
        <tbody>
          {ROWS.map((row, r) => (
            <tr key={row}>
              <th scope="row">{row}</th>
              {COLUMNS.map((column, c) => {
                const zone = THIRDS[3 * r + c]!;
                const depth = there?.zones.find((each) => each.zone === zone);
                return (
                  <td key={column}>
                    <Third tooth={tooth} zone={zone} depth={depth} units={short} gauge={gauge} />
                  </td>
                );
              })}
            </tr>
          ))}
        </tbody>
      </table>
      <p className="soft hint">
        {gauge === null ? "A click carries the rod to the deepest place; with a gauge in hand it leaves that gauge's mark." : `A click leaves a ${gauge.toFixed(2)} mm mark there.`}
      </p>
      {note && (
        <p className="note" role="status">
          {note}
        </p>
      )}
      <ToothHand />
      <button className="quiet" onClick={() => bench.notATooth(tooth)}>
        this is no tooth
      </button>
    </section>
  );
}

/** What the next click on the cast does with the chosen tooth. */
function ToothHand(): ReactElement {
  const hand = useBench((s) => s.toothHand);
  const join = useAction(action("tooth.join"));
  const cut = useAction(action("tooth.cut"));
  return (
    <>
      <div className="toothhand">
        <button className="quiet" aria-pressed={hand === "join"} title={join.hint} onClick={join.run}>
          join with …
        </button>
        <button className="quiet" aria-pressed={hand === "cut"} title={cut.hint} onClick={cut.run}>
          cut in two …
        </button>
      </div>
      {hand && (
        <p className="note" role="status">
          {hand === "join" ? "Now click the tooth that is the same one." : "Now click the middle of the part that is another tooth."} Esc lets go.
        </p>
      )}
    </>
  );
}

interface ThirdProps {
  readonly tooth: Fdi;
  readonly zone: Zone;
  readonly depth: ZoneDepth | undefined;
  readonly units: UnitChoice;
  readonly gauge: number | null;
}

/** One answer of the table: deepest place, the gauge that fits, how high over the margin. */
function Third({ tooth, zone, depth, units, gauge }: ThirdProps): ReactElement {
  const { bench } = useDesk();
  const cast = useBench((s) => s.cast);
  if (!depth || !cast) return <span className="soft">…</span>;
  const { reading, triangle, overMarginMm, hiddenMm } = depth;
  const go = (): void => {
    if (gauge !== null) void bench.markPlace(tooth, zone, mm(gauge));
    else if (reading && triangle !== undefined) bench.carry({ point: reading.point, triangle }, false);
  };
  const hidden = hiddenMm > cast.shallowMm ? `deeper, where no gauge reaches: ${lengthText(hiddenMm, units)}` : undefined;
  if (!reading || reading.depthMm < cast.shallowMm) {
    return (
      <button className="third none" disabled={gauge === null} onClick={go} title={hidden} data-zone={zone} data-depth={reading?.depthMm ?? 0}>
        none
        {hidden && <span className="line soft">behind</span>}
      </button>
    );
  }
  return (
    <button className="third" onClick={go} title={[reading.fitsText, hidden].filter(Boolean).join(" · ")} data-zone={zone} data-depth={reading.depthMm}>
      <b>
        {reading.capped ? "> " : ""}
        {lengthText(reading.depthMm, units)}
      </b>
      <span className="line soft">{reading.tooCloseToCall ? "too close to call" : (reading.fits ?? fitBelow(reading.depthMm, cast.gaugesMm))}</span>
      {overMarginMm !== null && overMarginMm !== undefined && <span className="line soft">{lengthText(overMarginMm, units, 1)} up</span>}
    </button>
  );
}

/** At the deepest place every smaller gauge finds its own curve higher up. */
function fitBelow(depth: number, gauges: readonly number[]): string {
  const sizes = gauges.filter((size) => size <= depth);
  return sizes.length === 0 ? `under ${Math.min(...gauges).toFixed(2)}` : `up to ${Math.max(...sizes).toFixed(2)}`;
}
