import { type ReactElement, type SubmitEvent, useState } from "react";
import { comparedHolds, others } from "../state/comparing";
import { problemText, toothText, worded } from "../values/tooth-number";
import { lengthText, mm, type UnitChoice } from "../values/units";
import type { Against, FindingChange, MeasureChange, PartChange, PlansCompared } from "../wire/comparison";
import type { Fdi } from "../wire/types";
import { LoadPicture } from "./LoadPicture";
import { FindingLine } from "./PlanFindings";
import { useBench, useDesk } from "./use-bench";

/** Plans kept by name, and what differs where another is held against the one on the table. */
export function PlanBeside(): ReactElement | null {
  const { bench } = useDesk();
  const document = useBench((s) => s.document);
  const planned = useBench((s) => s.planned);
  const teeth = useBench((s) => s.teeth);
  const notation = useBench((s) => s.notation);
  const against = useBench((s) => s.against);
  const compared = useBench((s) => s.compared);
  const comparing = useBench((s) => s.comparing);
  const holds = useBench(comparedHolds);
  const [name, setName] = useState("");
  if (!document) return null;
  const all = others({ document, planned, teeth }, (tooth) => toothText(tooth, notation));
  const keep = (event: SubmitEvent): void => {
    event.preventDefault();
    bench.comparing.keep(name);
    setName("");
  };
  return (
    <article className="planpart planbeside" aria-label="Another plan" data-holds={holds}>
      <h3>
        Beside another plan <span className="right soft">{comparing ? "comparing …" : ""}</span>
      </h3>
      <form className="handbar" onSubmit={keep}>
        <input value={name} maxLength={40} placeholder="name" aria-label="Name for this plan" onChange={(event) => setName(event.target.value)} />
        <button disabled={name.trim() === ""}>keep this plan</button>
      </form>
      {document.keptPlans.length > 0 && (
        <ul className="lines keptplans">
          {document.keptPlans.map((kept) => (
            <li key={kept.id}>
              {kept.name}{" "}
              <button className="plain word" onClick={() => bench.comparing.take(kept.id)}>
                put it on the table
              </button>{" "}
              <button className="plain word" onClick={() => bench.comparing.remove(kept.id)}>
                remove
              </button>
            </li>
          ))}
        </ul>
      )}
      <p>
        <label>
          hold against{" "}
          <select aria-label="Plan to hold against" value={all.some(({ key }) => key === against) ? against! : ""} onChange={(event) => bench.store.set({ against: event.target.value || null })}>
            <option value="">nothing</option>
            {all.map(({ key, name: other }) => (
              <option key={key} value={key}>
                {other}
              </option>
            ))}
          </select>
        </label>
      </p>
      {all.length === 0 && <p className="soft">Keep this plan, change a part, and hold one against the other.</p>}
      {compared?.problem && holds && (
        <p role="alert">
          <b>{problemText(compared.problem, notation)}</b> {compared.problem.advice}
        </p>
      )}
      {compared?.told && against !== null && (
        <div className={holds ? "" : "unheld"}>
          <Differences told={compared.told} />
        </div>
      )}
    </article>
  );
}

function Differences({ told }: { readonly told: PlansCompared }): ReactElement | null {
  const notation = useBench((s) => s.notation);
  const other = told.others[0];
  if (!other) return null;
  const { against, name } = other;
  const turns = (...which: FindingChange["turn"][]): FindingChange[] => against.findings.filter(({ turn }) => which.includes(turn));
  const rest = turns("changed", "only in the first", "only in the other");
  const nothing = against.parts.length + against.measures.length + against.findings.length === 0;
  return (
    <>
      {nothing && <p>Parts, measures and rules are the same.</p>}
      {against.parts.length > 0 && <Parts parts={against.parts} name={name} />}
      <LoadPicture told={told} loads={against.loads} />
      {against.remarkPieces.map((each) => (
        <p key={each.join("")} className="soft">
          {worded(each, notation)}
        </p>
      ))}
      <Findings title={`Lost with ${name}`} changes={turns("lost")} />
      <Findings title={`Gained with ${name}`} changes={turns("gained")} />
      {(rest.length > 0 || against.measures.length > 0 || against.firstOpenPieces.length + against.otherOpenPieces.length > 0) && (
        <details>
          <summary>measures, and what only one of them is asked</summary>
          <Measures measures={against.measures} />
          {rest.map(({ turn, first, other: second }, i) => (
            <ul key={i} className="findings num">
              {first && <FindingLine finding={first} />}
              {second && <FindingLine finding={second} />}
              <li className="soft">{turn === "changed" ? "↑ this plan, then the other" : turn === "only in the first" ? "↑ this plan only" : "↑ the other plan only"}</li>
            </ul>
          ))}
          <Open against={against} />
        </details>
      )}
    </>
  );
}

const wordsOf = (list: readonly string[]): string => (list.length === 0 ? "none" : list.join(" and "));

function Tooth({ tooth }: { readonly tooth: Fdi | null }): ReactElement | null {
  const { hands } = useDesk();
  const notation = useBench((s) => s.notation);
  const on = useBench((s) => s.teeth?.teeth.find((each) => each.tooth === tooth)?.on ?? null);
  if (tooth === null) return null;
  const number = <b className="num">{toothText(tooth, notation)}</b>;
  return on ? (
    <button className="plain there" onClick={() => hands.show(on)} title="Turn the stage to this tooth">
      {number}
    </button>
  ) : (
    number
  );
}

function Parts({ parts, name }: { readonly parts: readonly PartChange[]; readonly name: string }): ReactElement {
  return (
    <table className="partchanges" aria-label="Parts that differ">
      <thead>
        <tr>
          <th />
          <th scope="col">this plan</th>
          <th scope="col">{name}</th>
        </tr>
      </thead>
      <tbody>
        {parts.map(({ kind, tooth, first, other }) => (
          <tr key={`${kind} ${tooth}`}>
            <th scope="row">
              <Tooth tooth={tooth} /> {kind}
            </th>
            <td>{wordsOf(first)}</td>
            <td>{wordsOf(other)}</td>
          </tr>
        ))}
      </tbody>
    </table>
  );
}

const measureText = (value: number, unit: MeasureChange["unit"], units: UnitChoice): string =>
  unit === "mm" ? lengthText(mm(value), units === "in" ? "in" : "mm", 1) : unit === "mm²" ? `${(value / 100).toFixed(1)} cm²` : value.toFixed(2);

function Measures({ measures }: { readonly measures: readonly MeasureChange[] }): ReactElement | null {
  const units = useBench((s) => s.units);
  if (measures.length === 0) return null;
  return (
    <ul className="lines num">
      {measures.map(({ kind, tooth, what, unit, first, other }) => (
        <li key={`${kind} ${tooth} ${what}`}>
          <Tooth tooth={tooth} /> {kind}, {what}: {measureText(first, unit, units)} → <b>{measureText(other, unit, units)}</b>
        </li>
      ))}
    </ul>
  );
}

/** Rules as they stand with the other plan. */
function Findings({ title, changes }: { readonly title: string; readonly changes: readonly FindingChange[] }): ReactElement | null {
  if (changes.length === 0) return null;
  return (
    <>
      <h3>{title}</h3>
      <ul className="findings num">
        {changes.map(({ first, other }, i) => {
          const finding = other ?? first;
          return finding && <FindingLine key={i} finding={finding} />;
        })}
      </ul>
    </>
  );
}

function Open({ against }: { readonly against: Against }): ReactElement {
  const notation = useBench((s) => s.notation);
  return (
    <ul className="lines">
      {against.firstOpenPieces.map((each) => (
        <li key={each.join("")}>open with this plan only: {worded(each, notation)}</li>
      ))}
      {against.otherOpenPieces.map((each) => (
        <li key={each.join("")}>open with the other only: {worded(each, notation)}</li>
      ))}
    </ul>
  );
}
