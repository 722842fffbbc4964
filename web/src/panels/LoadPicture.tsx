import type { ReactElement } from "react";
import { type Notation, toothText } from "../values/tooth-number";
import type { LoadRatio, PlansCompared } from "../wire/comparison";
import { byBite, MOST_RATIO, place, TICKS, turned } from "./load-picture";
import { useBench } from "./use-bench";

const ROW = 19;
const LEFT = 84;
const AXIS = 140;
const WIDTH = 318;

const SHORT: Readonly<Record<LoadRatio["measure"], string>> = {
  "sinking of the base": "base sinks",
  "force on the tissue": "on tissue",
  "force on the rests": "on its rests",
  "tipping moment": "is tipped",
};
const tick = (ratio: number): string => (ratio < 1 ? `1/${Math.round(1 / ratio)}` : String(ratio));
const label = ({ tooth, measure }: LoadRatio, notation: Notation): string => (tooth === null ? SHORT[measure] : `${toothText(tooth, notation)} ${SHORT[measure]}`);
const answerText = ({ answer }: LoadRatio): string => (answer === "only in the first" ? "only this plan" : answer === "only in the other" ? "only the other" : answer);

/** What a bite on each base does with the other plan over what it does with this one: intervals, and never an absolute number. */
export function LoadPicture({ told, loads }: { readonly told: PlansCompared; readonly loads: readonly LoadRatio[] }): ReactElement {
  const notation = useBench((s) => s.notation);
  const { count, intervalShare, alike } = told.draws;
  return (
    <>
      {byBite(loads).map(({ bitten, loads: all }) => {
        const shown = all.filter(({ answer }) => answer !== "hardly loaded in either");
        const name = bitten.map((tooth) => toothText(tooth, notation)).join(", ");
        return (
          <figure key={name} className="loads" data-bitten={bitten.join(" ")}>
            <figcaption>
              A bite on {name} <span className="soft">the other plan over this one</span>
            </figcaption>
            <Axis rows={shown} alike={alike} notation={notation} />
            {all.length > shown.length && <p className="soft">{all.length - shown.length} more hardly loaded with either plan.</p>}
            {shown.map((load) => {
              const other = turned(load);
              return (
                other && (
                  <p key={String(load.tooth)} className="soft">
                    <b className="num">{toothText(load.tooth!, notation)}</b> is tipped {other.first} with this plan, {other.other} with the other.
                  </p>
                )
              );
            })}
          </figure>
        );
      })}
      <p className="soft">
        Bars hold {Math.round(100 * intervalShare)} % of {count} draws of what is unknown; filled: surely less or more; hollow: not separable. {told.caution}
      </p>
    </>
  );
}

function Axis({ rows, alike, notation }: { readonly rows: readonly LoadRatio[]; readonly alike: number; readonly notation: Notation }): ReactElement {
  const bottom = ROW * rows.length + 4;
  const x = (ratio: number): number => LEFT + place(ratio, AXIS);
  return (
    <svg className="loadaxis num" viewBox={`0 0 ${WIDTH} ${bottom + 26}`} role="img" aria-label={rows.map((each) => `${label(each, notation)}: ${answerText(each)}`).join("; ")}>
      <rect x={x(1 / alike)} width={x(alike) - x(1 / alike)} y={0} height={bottom} className="alike" />
      {TICKS.map((ratio) => (
        <g key={ratio}>
          <path d={`M${x(ratio)} 0V${bottom}`} className={ratio === 1 ? "one" : "tick"} />
          <text x={x(ratio)} y={bottom + 11} textAnchor="middle">
            {tick(ratio)}
          </text>
        </g>
      ))}
      <text x={LEFT} y={bottom + 23}>
        ← less
      </text>
      <text x={LEFT + AXIS} y={bottom + 23} textAnchor="end">
        more →
      </text>
      {rows.map((load, i) => {
        const { interval, answer, measure, tooth } = load;
        const y = ROW * i + ROW / 2 + 2;
        return (
          <g key={`${measure} ${tooth}`} data-answer={answer} className="ratio">
            <title>{interval ? `${measure}: ${interval.from.toFixed(2)} to ${interval.to.toFixed(2)} times` : `${measure}: ${answer}`}</title>
            <text x={LEFT - 6} y={y + 3.5} textAnchor="end">
              {label(load, notation)}
            </text>
            {interval && (
              <>
                <rect x={x(interval.from)} width={Math.max(1.5, x(interval.to) - x(interval.from))} y={y - 4} height={8} rx={1} className="bar" />
                {interval.to > MOST_RATIO && <path d={`M${LEFT + AXIS} ${y - 4}l5 4l-5 4Z`} className="beyond" />}
                {interval.from < 1 / MOST_RATIO && <path d={`M${LEFT} ${y - 4}l-5 4l5 4Z`} className="beyond" />}
              </>
            )}
            <text x={LEFT + AXIS + 8} y={y + 3.5} className="answer">
              {answerText(load)}
            </text>
          </g>
        );
      })}
    </svg>
  );
}
