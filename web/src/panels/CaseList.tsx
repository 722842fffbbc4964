import { type ReactElement, useState } from "react";
import { useBench, useDesk } from "./use-bench";
import { useDropDown } from "./use-drop-down";

const KEPT = { saved: "saved", saving: "saving …", changed: "saving …", failed: "not saved" } as const;

/** In which case the work is kept, and the cases that can be taken up again. */
export function CaseList(): ReactElement {
  const { bench } = useDesk();
  const cases = useBench((s) => s.cases);
  const caseOf = useBench((s) => s.caseOf);
  const kept = useBench((s) => s.kept);
  const cast = useBench((s) => s.cast);
  const { list, shut } = useDropDown();
  const [code, setCode] = useState("");
  return (
    <details
      ref={list}
      className="castlist caselist"
      data-kept={caseOf ? kept : "no"}
      onToggle={(event) => {
        if (event.currentTarget.open) void bench.keeping.list();
      }}
      onKeyDown={(event) => {
        if (event.key === "Escape") shut();
      }}
    >
      <summary title={caseOf ? `Every change is kept in the case ${caseOf.code}, revision ${caseOf.revision}` : "The work is kept in this browser tab alone"}>
        {caseOf ? (
          <>
            case <b>{caseOf.code}</b> <span className="soft">{KEPT[kept]}</span>
          </>
        ) : (
          <span className="soft">in no case</span>
        )}
      </summary>
      <ul aria-label="Cases">
        {cases.map((card) => (
          <li key={`${card.code} ${card.jaw} ${card.scan}`} className={card.code === caseOf?.code ? "on" : ""}>
            <button
              className="plain"
              onClick={() => {
                shut();
                void bench.openCase(card);
              }}
            >
              <span>{card.code}</span>
              <span className="soft num">
                {card.jaw ?? "jaw not told"} · {card.scan} · {new Date(card.savedAt).toLocaleString()}
              </span>
            </button>
          </li>
        ))}
        {cases.length === 0 && <li className="soft">No case is kept yet.</li>}
        {cast && !caseOf && (
          <li>
            <form
              onSubmit={(event) => {
                event.preventDefault();
                shut();
                void bench.keeping.keepAs(code);
                setCode("");
              }}
            >
              <input
                aria-label="Code of a new case"
                placeholder="code, no name"
                title="A code stands for the patient: 1 to 40 letters, digits, spaces and . _ -"
                value={code}
                maxLength={40}
                onChange={(event) => setCode(event.target.value)}
              />
              <button disabled={code.trim() === ""}>keep this cast in a case</button>
            </form>
          </li>
        )}
      </ul>
    </details>
  );
}
