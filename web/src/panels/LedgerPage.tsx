import type { ReactElement } from "react";
import { degreesText } from "../values/units";
import { rowOf } from "../state/ledger";
import { holds } from "../state/judging";
import { ForAll } from "./LedgerForAll";
import { LedgerRow } from "./LedgerRow";
import { problemText } from "../values/tooth-number";
import { useBench, useDesk } from "./use-bench";

/** The written record: one row an abutment, at the path that lies on the table. */
export function LedgerPage(): ReactElement {
  const judged = useBench((s) => s.judged);
  const judging = useBench((s) => s.judging);
  const fresh = useBench((s) => holds(s.judged, s));
  const sheet = judged?.sheet ?? null;
  return (
    <section aria-label="Ledger" className={fresh ? "ledger" : "ledger stale"} data-rows={sheet?.abutments.map(rowOf).join(", ")} data-fresh={fresh} data-judging={judging}>
      <h2>
        {sheet?.tilt ? `Abutments at ${degreesText(sheet.tilt.anteriorDeg)} / ${degreesText(sheet.tilt.rightDeg)}` : "Abutments"}
        <span className="right" role="status">
          {judging ? "judging …" : !fresh && sheet ? "of another path" : (sheet?.kennedy ?? "")}
        </span>
      </h2>
      {sheet ? (
        <>
          <ForAll abutments={sheet.abutments} />
          {sheet.abutments.map((abutment) => (
            <LedgerRow key={rowOf(abutment)} abutment={abutment} />
          ))}
          {sheet.abutments.length === 0 && <p className="soft">No tooth stands beside a space, so there is no abutment to judge.</p>}
          <p className="soft rulebookline" title={`rulebook ${sheet.rulebook.hash}`}>
            ● serves · ◐ serves after preparation · ? not decided · × does not serve. Judged by “{sheet.rulebook.title}” <code>{sheet.rulebook.hash.slice(0, 8)}</code>. An aid: the prescriber
            examines, decides and signs.
          </p>
        </>
      ) : (
        <WhyEmpty />
      )}
    </section>
  );
}

/** Why there is nothing to read yet, and what to do. */
function WhyEmpty(): ReactElement {
  const { bench } = useDesk();
  const cast = useBench((s) => s.cast);
  const teeth = useBench((s) => s.teeth);
  const teething = useBench((s) => s.teething);
  const judging = useBench((s) => s.judging);
  const problem = useBench((s) => s.judged?.problem ?? null);
  const notation = useBench((s) => s.notation);
  const toArch = (
    <button className="quiet" onClick={() => bench.turnTo("arch")}>
      to the arch page
    </button>
  );
  if (problem) {
    return (
      <div role="alert">
        <p>
          <b>{problemText(problem, notation)}</b>
        </p>
        <p>{problem.advice}</p>
        <p>
          <code>{problem.code}</code> {toArch}
        </p>
      </div>
    );
  }
  if (judging) return <p className="soft">Measuring the abutments and holding them against the rulebook …</p>;
  if (teething) return <p className="soft">Looking for the teeth …</p>;
  if (!cast?.frame || !cast.jaw) return <p className="soft">Abutments are judged once orientation and jaw of the cast are known: {toArch}</p>;
  if (!teeth || teeth.teeth.length === 0) return <p className="soft">Abutments are judged once the teeth are known: {toArch}</p>;
  return <p className="soft">The ledger is written once the tilt rests.</p>;
}
