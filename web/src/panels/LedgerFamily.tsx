import { type ReactElement, useState } from "react";
import { byVerdict, chosen as choiceOf, deciding, looked, rowOf, shortName, SIGNS } from "../state/ledger";
import { worded } from "../values/tooth-number";
import type { FamilyAnswer, Finding, Where } from "../wire/abutments";
import { ClaspFigures } from "./ClaspFigures";
import { findingText, limitText, preparationText, toldText, VERDICT_SIGNS } from "./ledger-words";
import { useBench, useDesk } from "./use-bench";

/** A place in words; where there is a point, a click turns the stage to it. */
export function WhereText({ place }: { readonly place: Pick<Where, "pieces" | "point"> }): ReactElement {
  const { hands } = useDesk();
  const notation = useBench((s) => s.notation);
  const { point } = place;
  const words = worded(place.pieces, notation);
  if (!point) return <span className="soft">{words}</span>;
  return (
    <button className="plain there" onClick={() => hands.show(point)} title="Turn the stage to this place">
      {words}
    </button>
  );
}

interface Props {
  readonly family: FamilyAnswer;
  readonly row: string;
  readonly chosen: boolean;
}

/** One family: its answer with the number behind it; opened, every finding. */
export function LedgerFamily({ family, row, chosen }: Props): ReactElement {
  const { bench } = useDesk();
  const units = useBench((s) => s.units);
  const [open, setOpen] = useState(false);
  const { name, answer, third, surface, gauge, preparations, changes, rankedBy, findings } = family;
  // The arms on the cast are those of one family: the one that was opened last.
  const drawn = useBench((s) => {
    const seen = looked(s);
    return seen !== null && rowOf(seen.abutment) === row && seen.family.family === family.family && family.clasp !== null;
  });
  const turn = (): void => {
    if (!open) bench.lookAt(family.family);
    setOpen(!open);
  };
  const no = deciding(family);
  return (
    <div className={open ? "family open" : "family"} data-family={family.family} data-answer={answer}>
      <button className="plain familyhead" aria-expanded={open} onClick={turn}>
        <i className="sign" aria-hidden="true">
          {SIGNS[answer]}
        </i>
        {answer === "does not serve" ? <s>{shortName(name)}</s> : <b>{shortName(name)}</b>}
        {chosen && <span className="stamp">chosen</span>}
        {drawn && (
          <span className="oncast" title="The arms on the cast are this family's">
            on the cast
          </span>
        )}
        <span className="soft right num">
          {third ? `${third} ${surface}` : surface} · {gauge.value.toFixed(2)}
        </span>
      </button>
      <p className="soft familyline num">
        {answer}
        {no && `: ${findingText(no, units)} (${no.standing})`}
        {changes.map(({ rule, what }) => `: ${what} (${rule.replaceAll("-", " ")})`).join("")}
        {preparations.map((each) => `: ${preparationText(each, units)} (${each.rule.replaceAll("-", " ")})`).join("")}
      </p>
      {open && (
        <>
          <p className="soft familyline">{rankedBy}</p>
          {family.clasp && !drawn && (
            <button className="quiet" onClick={() => bench.lookAt(family.family)}>
              lay its arms on the cast
            </button>
          )}
          <ClaspFigures family={family} />
          <Findings findings={findings} />
          {chosen ? (
            <button className="quiet" onClick={() => bench.chooseClasp(row, null)}>
              take the choice back
            </button>
          ) : (
            <button className="take" onClick={() => bench.chooseClasp(row, choiceOf(family))}>
              choose it{answer === "serves" ? "" : `, though it ${answer === "not decided" ? "is not decided" : answer}`}
            </button>
          )}
        </>
      )}
    </div>
  );
}

/** Every finding, what stands against the family first; where it was, why it is asked and who says so unfold by a click. */
function Findings({ findings }: { readonly findings: readonly Finding[] }): ReactElement {
  return (
    <ul className="findings num">
      {byVerdict(findings).map((finding, i) => (
        <FindingLine key={`${finding.rule} ${i}`} finding={finding} />
      ))}
    </ul>
  );
}

function FindingLine({ finding }: { readonly finding: Finding }): ReactElement {
  const { what, place, reading, limit, verdict, source, standing, otherwise, because } = finding;
  const units = useBench((s) => s.units);
  const [open, setOpen] = useState(verdict !== "met");
  const follows = otherwise === "rules out" ? "stops it" : otherwise === "warns" ? "a warning" : otherwise === "shows" ? "shown only" : otherwise;
  return (
    <li data-verdict={verdict}>
      <i className="sign" title={verdict}>
        {VERDICT_SIGNS[verdict]}
      </i>
      <span>
        <button className="plain" aria-expanded={open} onClick={() => setOpen(!open)}>
          {what} <b>{toldText(reading, units)}</b>, wanted {limitText(limit, units)}
          {verdict !== "met" && ` · ${verdict}: ${follows}`}
        </button>
        {open && (
          <span className="line soft">
            <WhereText place={place} /> · {because} · {standing}
            {source && !source.startsWith("no published source") ? `: ${source}` : ""}
          </span>
        )}
      </span>
    </li>
  );
}
