import type { ReactElement } from "react";
import { toothText } from "../values/tooth-number";
import { lengthText } from "../values/units";
import { type ConnectorKind, LOWER_CONNECTORS, type Plan, UPPER_CONNECTORS } from "../wire/plan";
import { toldText } from "./ledger-words";
import { useBench, useDesk } from "./use-bench";
import { usePart } from "./use-part";

const words = (kind: ConnectorKind): string => kind.replaceAll("-", " ").replace("u shaped", "U-shaped");

/** The major connector: its kind and measures, and its border, which is dragged on the cast. */
export function PlanConnector({ plan }: { readonly plan: Plan }): ReactElement | null {
  const { bench } = useDesk();
  const choices = useBench((s) => s.document?.plan ?? null);
  const units = useBench((s) => s.units);
  const notation = useBench((s) => s.notation);
  const entry = usePart<HTMLElement>("connector", "planpart");
  if (!choices) return null;
  const connector = plan.majorConnector;
  const kinds = plan.jaw === "upper" ? UPPER_CONNECTORS : LOWER_CONNECTORS;
  const choose = (value: string): void => {
    const kind = kinds.find((each) => each === value) ?? null;
    bench.changePlan(kind ? `${words(kind)} chosen` : "connector as proposed", { ...choices, connector: kind });
  };
  return (
    <article {...entry} aria-label="Major connector">
      <h3>Major connector</h3>
      <p>
        <select aria-label="Kind of major connector" value={choices.connector ?? ""} onChange={(event) => choose(event.target.value)}>
          <option value="">proposed{connector && !choices.connector ? `: ${words(connector.kind)}` : ""}</option>
          {kinds.map((kind) => (
            <option key={kind} value={kind}>
              {words(kind)}
            </option>
          ))}
        </select>
      </p>
      {connector ? (
        <>
          <p className="num measures">
            <span>
              area <b>{(connector.areaMm2 / 100).toFixed(1)} cm²</b>
            </span>
            <span>
              least width <b>{lengthText(connector.leastWidthMm, units)}</b>
            </span>
            {plan.jaw === "lower" && (
              <span>
                room to the floor of the mouth <b>{connector.room.kind === "not-known" ? "not known" : toldText(connector.room, units)}</b>
              </span>
            )}
          </p>
          <p className="soft">
            {connector.because}. Its border is moved by the knots on the cast.
            {choices.moves.length > 0 && (
              <>
                {" "}
                Moved {choices.moves.length === 1 ? "once" : `${choices.moves.length} times`}:{" "}
                <button className="plain word" onClick={() => bench.changePlan("border as proposed", { ...choices, moves: [] })}>
                  take back
                </button>
              </>
            )}
          </p>
        </>
      ) : (
        <p className="soft">None could be laid.</p>
      )}
      {plan.fulcrum && (
        <p className="soft">
          The bases turn about a line through {toothText(plan.fulcrum.right, notation)} and {toothText(plan.fulcrum.left, notation)}.
        </p>
      )}
    </article>
  );
}
