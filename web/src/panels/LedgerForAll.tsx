import type { ReactElement } from "react";
import { forAll } from "../state/ledger";
import type { Abutment } from "../wire/abutments";
import { useBench, useDesk } from "./use-bench";

/** What is asked once for all abutments; a tooth of its own answer keeps it. */
export function ForAll({ abutments }: { readonly abutments: readonly Abutment[] }): ReactElement | null {
  const { bench } = useDesk();
  const said = useBench((s) => s.document?.answers ?? null);
  const asked = forAll(abutments, said ?? {});
  if (asked.length === 0) return null;
  return (
    <details className="forall" open>
      <summary>Asked once, for all abutments</summary>
      <ul className="unknowns">
        {asked.map(({ fact, what, choices, rows, answer }) => (
          <li key={fact} data-fact={fact}>
            <span>
              {what}
              {answer !== null && (
                <>
                  : <b>{answer}</b>
                </>
              )}
              {answer === null && (
                <span className="line soft">
                  open at {rows} of {abutments.length}
                </span>
              )}
            </span>
            <span className="answers">
              {answer === null ? (
                choices.map((each) => (
                  <button key={each} className="plain word" onClick={() => bench.answerForAll(fact, what, each)}>
                    {each}
                  </button>
                ))
              ) : (
                <button className="plain word" onClick={() => bench.answerForAll(fact, what, null)}>
                  not known after all
                </button>
              )}
            </span>
          </li>
        ))}
      </ul>
    </details>
  );
}
