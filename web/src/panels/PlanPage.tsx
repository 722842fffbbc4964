import type { ReactElement } from "react";
import { planHolds } from "../state/planning";
import { changes, NOTHING_CHOSEN } from "../state/plan-choices";
import { degreesText } from "../values/units";
import { HandOver } from "./HandOver";
import { PlanBases } from "./PlanBases";
import { PlanBeside } from "./PlanBeside";
import { PlanConnector } from "./PlanConnector";
import { PlanContents } from "./PlanContents";
import { PlanVerdict } from "./PlanFindings";
import { PlanPreparation } from "./PlanPreparation";
import { PlanSheetFigure } from "./PlanSheetFigure";
import { PlanRetainers } from "./PlanRetainers";
import { plannedTeeth, PlanTooth } from "./PlanTooth";
import { problemText } from "../values/tooth-number";
import { useBench, useDesk } from "./use-bench";

/** The denture as planned at the path on the table: its drawing, its parts with their measures, what is for and against it. */
export function PlanPage(): ReactElement {
  const { bench } = useDesk();
  const planned = useBench((s) => s.planned);
  const planning = useBench((s) => s.planning);
  const fresh = useBench((s) => planHolds(s.planned, s));
  const choices = useBench((s) => s.document?.plan ?? null);
  const sheet = planned?.sheet ?? null;
  const plan = sheet?.plan ?? null;
  const problem = planned?.problem ?? null;
  const notation = useBench((s) => s.notation);
  const order = useBench((s) => s.teeth?.teeth ?? null);
  const teeth = plan ? plannedTeeth(plan, order ?? [], choices?.notUsed ?? []) : [];
  const changed = choices ? changes(choices) : 0;
  return (
    <section aria-label="Plan" className={fresh ? "plan" : "plan stale"} data-fresh={fresh} data-clasps={plan?.clasps.map(({ tooth, family }) => `${tooth} ${family}`).join(", ")}>
      <h2>
        {planned ? `Plan at ${degreesText(planned.tilt.anterior)} / ${degreesText(planned.tilt.right)}` : "Plan"}
        <span className="right" role="status">
          {planning ? "planning …" : !fresh && sheet ? "of another state" : (plan?.kennedy ?? "")}
        </span>
      </h2>
      {problem && (
        <div role="alert">
          <p>
            <b>{problemText(problem, notation)}</b>
          </p>
          <p>{problem.advice}</p>
          <p>
            <code>{problem.code}</code>
          </p>
        </div>
      )}
      {changed > 0 && (
        <p className="soft">
          {changed === 1 ? "One thing" : `${changed} things`} changed by hand.{" "}
          <button
            className="plain word"
            onClick={() => bench.changePlan("plan as proposed", NOTHING_CHOSEN)}
          >
            back to what is proposed
          </button>
        </p>
      )}
      {sheet && plan ? (
        <>
          <PlanContents />
          <PlanSheetFigure drawing={sheet.drawing} plan={plan} />
          <PlanVerdict plan={plan} listed={teeth} />
          <PlanConnector plan={plan} />
          <PlanRetainers plan={plan} />
          {teeth.map((tooth) => (
            <PlanTooth key={tooth} plan={plan} tooth={tooth} />
          ))}
          <PlanBases plan={plan} />
          <PlanPreparation preparation={plan.preparation} cuts={sheet.cuts} />
          <PlanBeside />
          <HandOver />
          <p className="soft rulebookline" title={`rulebook ${plan.rulebook.hash}`}>
            Planned by “{plan.rulebook.title}”. An aid: the prescriber examines, decides and signs.
          </p>
        </>
      ) : (
        !problem && <WhyEmpty />
      )}
    </section>
  );
}

/** Why there is no plan yet, and what to do. */
function WhyEmpty(): ReactElement {
  const { bench } = useDesk();
  const cast = useBench((s) => s.cast);
  const teeth = useBench((s) => s.teeth);
  const teething = useBench((s) => s.teething);
  const planning = useBench((s) => s.planning);
  const toArch = (
    <button className="quiet" onClick={() => bench.turnTo("arch")}>
      to the arch page
    </button>
  );
  if (planning) return <p className="soft">Laying the parts on the cast and holding them against the rulebook …</p>;
  if (teething) return <p className="soft">Looking for the teeth …</p>;
  if (!cast?.frame || !cast.jaw) return <p className="soft">A denture is planned once orientation and jaw of the cast are known: {toArch}</p>;
  if (!teeth || teeth.teeth.length === 0) return <p className="soft">A denture is planned once the teeth are known: {toArch}</p>;
  return <p className="soft">The plan is made once the tilt rests.</p>;
}
