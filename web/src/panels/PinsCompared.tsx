import { type ReactElement, useEffect, useState } from "react";
import { createPortal } from "react-dom";
import { sameTilt } from "../values/tilt";
import { worded } from "../values/tooth-number";
import { degreesText } from "../values/units";
import type { ComparedFigure, PathsCompared } from "../wire/path";
import type { NamedTilt } from "../state/bench-state";
import { useBench, useDesk } from "./use-bench";

const digits = (unit: string): number => (unit === "mm" ? 2 : 1);
const FACTOR_WORDS: Readonly<Record<ComparedFigure["factor"], string>> = {
  guiding: "Guiding planes",
  retention: "Retention",
  interference: "In the way",
  appearance: "What shows",
  tilt: "The tilt itself",
};

/** Two orientations side by side in plain numbers, tooth by tooth; the cast is set at either with one click. */
export function PinsCompared(props: { readonly from: NamedTilt; readonly to: NamedTilt; readonly close: () => void }): ReactElement | null {
  const { from, to, close } = props;
  const { bench } = useDesk();
  const teeth = useBench((s) => s.teeth);
  const tilt = useBench((s) => s.document?.tilt ?? null);
  const [answer, setAnswer] = useState<{ readonly of: unknown; readonly told: PathsCompared } | null>(null);
  const [all, setAll] = useState(false);
  const beside = useBench((s) => s.beside !== null);
  useEffect(() => () => bench.store.set({ beside: null }), [bench]);
  useEffect(() => {
    let wanted = true;
    void bench.searching.compared(from.tilt, to.tilt).then((told) => {
      if (wanted && told) setAnswer({ of: teeth, told });
    });
    return () => {
      wanted = false;
    };
  }, [bench, from.tilt, to.tilt, teeth]);
  const told = answer?.of === teeth ? answer.told : null;
  const place = document.querySelector("main.table");
  if (!place) return null;
  const rows = told?.rows.filter((row) => all || row.turn !== "same") ?? [];
  const same = (told?.rows.length ?? 0) - (told?.rows.filter((row) => row.turn !== "same").length ?? 0);
  const side = (one: NamedTilt): ReactElement => (
    <button className={tilt && sameTilt(tilt, one.tilt) ? "onside" : "quiet"} title="Set the cast at this tilt" onClick={() => bench.jumpTo(one.tilt)}>
      {one.name}
      <span className="line num soft">
        {degreesText(one.tilt.anterior)} / {degreesText(one.tilt.right)}
      </span>
    </button>
  );
  return createPortal(
    <figure className={beside ? "pinscompared slim" : "pinscompared"} aria-label={`${from.name} against ${to.name}`} data-testid="pins-compared" data-rows={told?.rows.length ?? 0}>
      <table className="num">
        <thead>
          <tr>
            <td>
              <button className="quiet" onClick={close}>
                close
              </button>{" "}
              <button
                className="quiet"
                aria-pressed={beside}
                onClick={() => {
                  if (!beside) bench.jumpTo(from.tilt);
                  bench.store.set({ beside: beside ? null : { from, to, cut: null } });
                }}
              >
                {beside ? "numbers" : "on the cast"}
              </button>
            </td>
            {!beside && <th scope="col">{side(from)}</th>}
            {!beside && <th scope="col">{side(to)}</th>}
          </tr>
        </thead>
        <tbody hidden={beside}>
          {rows.map((row, i) => (
            <Row key={row.what} row={row} first={rows[i - 1]?.factor !== row.factor} />
          ))}
        </tbody>
      </table>
      {!told && <p className="soft">measuring both …</p>}
      {same > 0 && !beside && (
        <button className="quiet" onClick={() => setAll(!all)}>
          {all ? "only what differs" : `${same} more that do not differ`}
        </button>
      )}
    </figure>,
    place,
  );
}

function Row({ row, first }: { readonly row: ComparedFigure; readonly first: boolean }): ReactElement {
  const notation = useBench((s) => s.notation);
  const text = (value: number): string => `${value.toFixed(digits(row.unit)).replace("-", "−")} ${row.unit}`;
  return (
    <>
      {first && (
        <tr className="factor">
          <th scope="colgroup" colSpan={3}>
            {FACTOR_WORDS[row.factor]}
          </th>
        </tr>
      )}
      <tr data-turn={row.turn}>
        <th scope="row">{worded(row.pieces, notation)}</th>
        <td className={row.turn === "worse" ? "good" : ""}>{text(row.from)}</td>
        <td className={row.turn === "better" ? "good" : ""}>{text(row.to)}</td>
      </tr>
    </>
  );
}
