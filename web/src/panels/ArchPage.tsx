import type { ReactElement } from "react";
import { NOTATIONS, problemText, worded } from "../values/tooth-number";
import { ArchChart } from "./ArchChart";
import { ChartFacts, FreeEnds, MouthFacts, Tori } from "./ChartFacts";
import { OpposingPanel, PlaneOfferPanel } from "./OpposingPanel";
import { ToothPanel } from "./ToothPanel";
import { useBench, useDesk } from "./use-bench";

/** The arch: its chart, its class with the reason, and the chosen tooth. */
export function ArchPage(): ReactElement | null {
  const { bench } = useDesk();
  const cast = useBench((s) => s.cast);
  const notation = useBench((s) => s.notation);
  const teeth = useBench((s) => s.teeth);
  const teething = useBench((s) => s.teething);
  const document = useBench((s) => s.document);
  if (!cast || !document) return null;
  if (!cast.jaw || !cast.frame) {
    return (
      <section aria-label="Arch">
        <p className="soft">{cast.frame ? "Teeth have numbers only where the jaw is known." : "The cast has no orientation yet."}</p>
        {cast.frame && (
          <div className="jaw" role="group" aria-label="Which jaw">
            <button onClick={() => bench.setFrame({ ...document.frame, jaw: "upper" })}>upper</button>
            <button onClick={() => bench.setFrame({ ...document.frame, jaw: "lower" })}>lower</button>
          </div>
        )}
      </section>
    );
  }
  return (
    <>
      <section aria-label="Arch" className="archpage" data-teeth={teeth?.teeth.map(({ tooth }) => tooth).join(" ")} data-busy={teething}>
        <ArchChart cast={cast} jaw={cast.jaw} frame={cast.frame} />
        <div className="underchart">
          {teeth ? (
            <b data-testid="kennedy" title={teeth.kennedy.text ?? ""}>
              {teeth.kennedy.title}
            </b>
          ) : (
            <span className="soft">{teething ? "looking for the teeth …" : ""}</span>
          )}
          <span role="radiogroup" aria-label="Tooth numbers" className="choice small">
            {NOTATIONS.map((each) => (
              <button key={each} role="radio" aria-checked={notation === each} onClick={() => bench.chooseNotation(each)}>
                {each}
              </button>
            ))}
          </span>
        </div>
        {teeth?.problem && (
          <p className="note" role="status">
            {problemText(teeth.problem, notation)} Click each tooth on the cast.
          </p>
        )}
        {teeth?.warnings.map((warning) => (
          <p key={warning.code} className="note" role="status" data-warning={warning.code}>
            {problemText(warning, notation)} {warning.advice}
          </p>
        ))}
      </section>
      <ToothPanel />
      <OpposingPanel />
      <PlaneOfferPanel />
      <ChartFacts />
      <FreeEnds />
      <Tori />
      <MouthFacts />
      <section aria-label="Class">
        <h2>Why {teeth?.kennedy.title ?? "this class"}</h2>
        {teeth && (
          <ul className="lines">
            {teeth.kennedy.text && <li>{teeth.kennedy.text}</li>}
            {teeth.kennedy.reasons.map(({ rule, says, text }) => (
              <li key={`${rule} ${text.join("")}`} title={`Applegate's rule ${rule}: ${says}`}>
                {worded(text, notation)} <span className="soft">(Applegate {rule})</span>
              </li>
            ))}
            {teeth.kennedy.questions.map((question) => (
              <li key={question.text.join("")} className="asked">
                {worded(question.text, notation)}
                {[true, false].map((yes) => (
                  <button
                    key={String(yes)}
                    className="plain word"
                    aria-pressed={question.assumed === yes}
                    title={question.assumed === yes ? "assumed until answered" : `would be ${question.otherwise}`}
                    onClick={() => bench.charting.answer(question, yes)}
                  >
                    {yes ? "yes" : "no"}
                  </button>
                ))}{" "}
                <span className="soft">
                  {question.assumed ? "Yes" : "No"} is assumed; otherwise {question.otherwise}.
                </span>
              </li>
            ))}
            {teeth.remarks.slice(0, 2).map((remark) => (
              <li key={remark.join("")}>{worded(remark, notation)}</li>
            ))}
            {teeth.remarks.length > 2 && <li>… and {teeth.remarks.length - 2} more differences between chart and scan</li>}
          </ul>
        )}
      </section>
    </>
  );
}
