import { type ReactElement, useState } from "react";
import { ORDER_FIELDS, type OrderField, type Paper } from "../wire/cases";
import { useBench, useDesk } from "./use-bench";

/** What the laboratory gets: what the prescriber writes, the pages to look at, and everything in one folder. */
export function HandOver(): ReactElement | null {
  const { bench } = useDesk();
  const order = useBench((s) => s.document?.order ?? null);
  const caseOf = useBench((s) => s.caseOf);
  const writing = useBench((s) => s.writing);
  const [paper, setPaper] = useState<Paper>("a4");
  if (!order) return null;
  const filled = Object.values(order).filter((text) => text !== "").length;
  return (
    <article className="planpart handover" aria-label="Prescription">
      <h3>Prescription</h3>
      <details>
        <summary>
          What the prescriber writes <span className="soft num">{filled} of {Object.keys(ORDER_FIELDS).length}; the rest prints as blanks</span>
        </summary>
        {(Object.keys(ORDER_FIELDS) as OrderField[]).map((field) => (
          <label key={field}>
            <span>{ORDER_FIELDS[field]}</span>
            <input
              key={order[field] ?? ""}
              defaultValue={order[field] ?? ""}
              maxLength={600}
              onBlur={(event) => bench.writeOrder(field, ORDER_FIELDS[field], event.target.value.trim())}
            />
          </label>
        ))}
      </details>
      <p className="handbar">
        <select aria-label="Paper" value={paper} onChange={(event) => setPaper(event.target.value as Paper)}>
          <option value="a4">A4</option>
          <option value="letter">Letter</option>
        </select>
        <button disabled={writing !== null} onClick={() => void bench.handOver("pages", paper)} title="The prescription as it will print">
          pages (PDF)
        </button>
        <button
          disabled={writing !== null}
          onClick={() => void bench.handOver("folder", paper)}
          title="Pages, JSON, drawing, survey table, and the cast at its path as STL, PLY, OBJ and DXF, in one zip"
        >
          all for the laboratory (zip)
        </button>
      </p>
      <p className="soft" role="status">
        {writing ? "Writing …" : caseOf ? `Handed over, the documents are kept in case ${caseOf.code}.` : "The scan's name stands for the case code until the work is kept in a case."}
      </p>
    </article>
  );
}
