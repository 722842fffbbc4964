import type { ReactElement } from "react";
import { apart, type Column, columns } from "./crown-picture";
import { lengthText, mm } from "../values/units";
import type { Abutment, PlaneTold } from "../wire/abutments";
import { toldText } from "./ledger-words";
import { WhereText } from "./LedgerFamily";
import { worded } from "../values/tooth-number";
import { useBench, useDesk } from "./use-bench";

const WIDTH = 150;
const PX_PER_MM = 8;
const FOOT = 30;

/** What was measured: both surfaces drawn from their thirds, then the figures, each with its place. */
export function Measured({ abutment }: { readonly abutment: Abutment }): ReactElement {
  const units = useBench((s) => s.units);
  const known = abutment.facts.filter(({ reading }) => reading.kind !== "not-known");
  return (
    <>
      <div className="crowns">
        {(["facial", "lingual"] as const).map((surface) => (
          <Crown key={surface} surface={surface} columns={columns(abutment.thirds, surface)} />
        ))}
      </div>
      <details className="measured">
        <summary>What was measured</summary>
        <ul className="num">
          {abutment.planes.map((plane) => (
            <Plane key={plane.surface} plane={plane} />
          ))}
          {known.map(({ fact, what, reading, place }) => (
            <li key={fact}>
              <span>{place.point ? <WhereText place={{ ...place, pieces: [what] }} /> : what}</span>
              <b>{toldText(reading, units)}</b>
            </li>
          ))}
        </ul>
      </details>
    </>
  );
}

function Plane({ plane }: { readonly plane: PlaneTold }): ReactElement {
  const units = useBench((s) => s.units);
  const { surface, wantedHeight, there, couldBe, within, enamelMost, heightLeast } = plane;
  const text = (length: number): string => lengthText(mm(length), units === "in" ? "in" : "mm", 1);
  const fine = (length: number): string => lengthText(mm(length), units === "in" ? "in" : "mm");
  return (
    <>
      <li>
        <span>{there ? <WhereText place={{ pieces: [`${surface} plane now`], point: there.point }} /> : `${surface} plane now`}</span>
        <b>
          {there ? `${text(there.heightMm)} of ${text(wantedHeight.value)} high, ${text(there.widthMm)} wide` : `none of ${text(wantedHeight.value)}`}
        </b>
      </li>
      {couldBe && (
        <li>
          <span>
            <WhereText place={{ pieces: [`${surface} plane to cut`], point: couldBe.point }} />
          </span>
          <b>
            {text(couldBe.heightMm)} high takes {fine(couldBe.enamelMm)}
            {within === null
              ? couldBe.heightMm >= heightLeast.value
                ? `, at most ${fine(enamelMost.value)}: none is cut`
                : `, less than ${text(heightLeast.value)} high: none is cut`
              : within.enamelMm !== couldBe.enamelMm && `; cut ${text(within.heightMm)} high for ${fine(within.enamelMm)}`}
          </b>
        </li>
      )}
    </>
  );
}

/** A surface seen straight on, mesial to the left: its edge, its survey line, and the gauge marks below it, to scale. */
function Crown({ surface, columns: drawn }: { readonly surface: string; readonly columns: readonly Column[] }): ReactElement {
  const notation = useBench((s) => s.notation);
  const { hands } = useDesk();
  const tops = drawn.flatMap(({ top }) => (top === null ? [] : [top]));
  const height = Math.max(44, PX_PER_MM * Math.max(0, ...tops) + 20) + FOOT;
  const x = (i: number): number => (WIDTH / 3) * (i + 0.5);
  const y = (at: number): number => height - FOOT - 4 - PX_PER_MM * at;
  const through = (of: (column: Column) => number | null): string => {
    const at = drawn.flatMap((column, i) => {
      const h = of(column);
      return h === null ? [] : [[x(i), y(h)] as const];
    });
    const [first, last] = [at[0], at.at(-1)];
    if (!first || !last) return "";
    return `M${first[0] - 20} ${first[1]}${at.map(([px, py]) => `L${px} ${py}`).join("")}L${last[0] + 20} ${last[1]}`;
  };
  return (
    <svg viewBox={`0 0 ${WIDTH} ${height}`} className="crown num" role="img" aria-label={`${surface} surface: survey line and gauge marks by thirds`}>
      <path d={through(({ top }) => top)} className="edge" />
      <path d={`M5 ${y(0)}H${WIDTH - 5}`} className="low" />
      <path d={through(({ line }) => line)} className="line" />
      {drawn.map(({ zone, line, marks, deepest }, i) => {
        const letters = apart(marks.map(({ height: at }) => y(at) + 3), 9);
        return (
        <g key={zone}>
          {line === null && (
            <text x={x(i)} y={y(1)} textAnchor="middle" className="faint">
              no line
            </text>
          )}
          {marks.map(({ gaugeMm, height: at, mark }, k) => (
            <g key={gaugeMm} className="gmark" onClick={() => mark.place.point && hands.show(mark.place.point)}>
              <title>{`${gaugeMm.toFixed(2)} mm, ${worded(mark.place.pieces, notation)}; below the survey line ${mark.belowLine.words}, from the margin ${mark.fromMargin.words}`}</title>
              <circle cx={x(i) - 8} cy={y(at)} r="2.6" />
              <text x={x(i) - 3} y={letters[k]}>
                {gaugeMm.toFixed(2).replace(/^0/, "")}
              </text>
            </g>
          ))}
          {marks.length === 0 && line !== null && (
            <text x={x(i)} y={y(0) - 3} textAnchor="middle" className="faint">
              {deepest.kind === "measured" ? deepest.value.toFixed(2) : "–"}
            </text>
          )}
        </g>
        );
      })}
      <text x="5" y={height - 3} className="faint">
        mesial
      </text>
      <text x={WIDTH / 2} y={height - 3} textAnchor="middle">
        {surface}
      </text>
      <text x={WIDTH - 5} y={height - 3} textAnchor="end" className="faint">
        distal
      </text>
    </svg>
  );
}
