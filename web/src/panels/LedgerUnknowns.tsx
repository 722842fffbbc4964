import type { ReactElement } from "react";
import { openQuestions } from "../state/ledger";
import type { Abutment } from "../wire/abutments";
import { useBench, useDesk } from "./use-bench";

/** What is not known and could change the answer, most decisive first; a click answers it. What was answered can be taken back. */
export function Unknowns({ abutment }: { readonly abutment: Abutment }): ReactElement | null {
  const { bench } = useDesk();
  const { tooth, facts } = abutment;
  const said = useBench((s) => s.document?.answers[tooth] ?? null);
  const asked = openQuestions(abutment);
  const given = typeof said === "object" && said ? Object.entries(said) : [];
  if (asked.length === 0 && given.length === 0) return null;
  const words = (fact: string): string => facts.find((each) => each.fact === fact)?.what ?? fact.replaceAll("-", " ");
  return (
    <>
      <h3>Not known, and could change the answer</h3>
      <ul className="unknowns">
        {asked.map(({ fact, decides }) => {
          const told = facts.find((each) => each.fact === fact);
          return (
            <li key={fact} data-fact={fact}>
              <span title={told?.reading.words}>
                {words(fact)}
                <span className="line soft">{decides.length > 0 ? `decides ${decides.slice(0, 4).join(", ")}${decides.length > 4 ? ` and ${decides.length - 4} more` : ""}` : "changes the order"}</span>
              </span>
              <span className="answers">
                {(told?.choices ?? []).map((each) => (
                  <button key={each} className="plain word" onClick={() => bench.answerFact(tooth, fact, words(fact), each)}>
                    {each}
                  </button>
                ))}
              </span>
            </li>
          );
        })}
        {given.map(([fact, answer]) => (
          <li key={fact} data-fact={fact}>
            <span>
              {words(fact)}: <b>{answer}</b>
            </span>
            <span className="answers">
              <button className="plain word" onClick={() => bench.answerFact(tooth, fact, words(fact), null)}>
                not known after all
              </button>
            </span>
          </li>
        ))}
      </ul>
    </>
  );
}
