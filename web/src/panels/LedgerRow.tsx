import { type ReactElement, useEffect, useRef, useState } from "react";
import { choiceAt, type ClaspChoice, noes, openQuestions, rowOf, shortName, SIGNS } from "../state/ledger";
import { toothText } from "../values/tooth-number";
import type { ScanVec } from "../values/vec";
import type { Abutment, FamilyAnswer } from "../wire/abutments";
import { findingText } from "./ledger-words";
import { LedgerBeside } from "./LedgerBeside";
import { LedgerFamily } from "./LedgerFamily";
import { Measured } from "./LedgerMeasured";
import { Unknowns } from "./LedgerUnknowns";
import { ProfilePanel } from "./ProfilePanel";
import { useBench, useDesk } from "./use-bench";

const NOES_SHOWN = 3;

/** Where the stage turns when a row is opened: to the tip of what serves best, else to a mark, else to the middle of the facial surface. */
function mainPlace({ families, thirds, point }: Abutment): ScanVec {
  const tip = families.flatMap(({ findings }) => findings).find(({ rule, place }) => rule === "retentive-undercut" && place.point);
  const mark = thirds.flatMap(({ marks }) => marks)[0];
  return tip?.place.point ?? mark?.place.point ?? point;
}

/** What was chosen for a row. */
function useChoice(row: string): ClaspChoice | null {
  const clasps = useBench((s) => s.document?.clasps ?? null);
  const abutments = useBench((s) => s.judged?.sheet?.abutments ?? null);
  return clasps && abutments ? choiceAt(clasps, abutments, row) : null;
}

/** One abutment: shut, what can serve in order and the number behind each no; open, the whole record. */
export function LedgerRow({ abutment }: { readonly abutment: Abutment }): ReactElement {
  const { bench, hands } = useDesk();
  const row = rowOf(abutment);
  const open = useBench((s) => s.row === row);
  const notation = useBench((s) => s.notation);
  const choice = useChoice(row);
  const { tooth, side, space, families } = abutment;
  const turn = (): void => {
    bench.openRow(open ? null : row);
    if (!open) hands.show(mainPlace(abutment));
  };
  const article = useRef<HTMLElement>(null);
  useEffect(() => {
    const aside = article.current?.closest("aside");
    if (open && aside && article.current) aside.scrollTop += article.current.getBoundingClientRect().top - aside.getBoundingClientRect().top - 4;
  }, [open]);
  const gauge = families[0] && families[0].answer !== "does not serve" ? families[0].gauge.value.toFixed(2) : "";
  return (
    <article ref={article} className={open ? "abutment open" : "abutment"} aria-label={`Abutment ${row}`}>
      <button className="plain abuthead" aria-expanded={open} onClick={turn} title={open ? "Shut the row" : "Open the row; the stage turns to the tooth"}>
        <b className="num">{toothText(tooth, notation)}</b>
        <span className="soft">
          {side}
          {space ? (space.freeEnd ? " · free end" : " · space") : ""}
        </span>
        <span className="soft right num">{gauge}</span>
      </button>
      <Verdicts families={families} chosen={choice?.family ?? null} />
      {!open && <Shut abutment={abutment} />}
      {open && <Open abutment={abutment} row={row} />}
    </article>
  );
}

function Verdicts({ families, chosen }: { readonly families: readonly FamilyAnswer[]; readonly chosen: string | null }): ReactElement {
  const can = families.filter(({ answer, family }) => answer !== "does not serve" || family === chosen);
  if (can.length === 0) return <p className="verdicts">No family of the rulebook serves here.</p>;
  return (
    <p className="verdicts">
      {can.map(({ family, name, answer }) => (
        <span key={family} className={`verdict ${answer.replaceAll(" ", "-")}${family === chosen ? " chosen" : ""}`} title={`${name}: ${answer}${family === chosen ? "; chosen" : ""}`}>
          <i aria-hidden="true">{SIGNS[answer]}</i>
          {shortName(name)}
          <span className="unseen">: {answer}</span>
        </span>
      ))}
    </p>
  );
}

/** A shut row: each no with its number, and what is open. */
function Shut({ abutment }: { readonly abutment: Abutment }): ReactElement {
  const units = useBench((s) => s.units);
  const no = noes(abutment.families);
  const asked = openQuestions(abutment).filter(({ decides }) => decides.length > 0);
  const words = new Map(abutment.facts.map(({ fact, what }) => [fact, what]));
  return (
    <ul className="noes num">
      {no.slice(0, NOES_SHOWN).map(({ names, finding }) => (
        <li key={names.join()}>
          <s>{names.join(", ")}</s> {finding && <span className="soft">{findingText(finding, units)} ({finding.standing})</span>}
        </li>
      ))}
      {no.length > NOES_SHOWN && <li className="soft">… and {no.slice(NOES_SHOWN).flatMap(({ names }) => names).length} more that do not</li>}
      {asked.length > 0 && (
        <li className="soft">
          Not known, and could change the answer: {asked.slice(0, 3).map(({ fact }) => words.get(fact) ?? fact.replaceAll("-", " ")).join("; ")}
          {asked.length > 3 && `; ${asked.length - 3} more`}
        </li>
      )}
    </ul>
  );
}

function Open({ abutment, row }: { readonly abutment: Abutment; readonly row: string }): ReactElement {
  const { bench } = useDesk();
  const choice = useChoice(row);
  const [beside, setBeside] = useState(false);
  return (
    <>
      <div className="rowprofile">
        <ProfilePanel />
      </div>
      <Measured abutment={abutment} />
      {choice && (
        <div className="choicekept">
          <b>Chosen: {choice.name}</b> <span className="soft">({choice.answer})</span>
          <button className="quiet" onClick={() => bench.chooseClasp(row, null)}>
            take back
          </button>
          <p className="soft">
            {choice.arm && choice.arm.length > 0 ? (
              <>
                Its arm was shaped by hand.{" "}
                <button className="quiet" onClick={() => bench.straightenArm(row)}>
                  lay it out anew
                </button>
              </>
            ) : (
              "Its arm can be taken by the rings on the cast and pulled."
            )}
          </p>
          {choice.warnings.length > 0 && (
            <ul className="lines">
              {choice.warnings.map((each) => (
                <li key={each}>{each}</li>
              ))}
            </ul>
          )}
        </div>
      )}
      <h3>
        Families in order
        <button className="quiet right" aria-pressed={beside} onClick={() => setBeside(!beside)}>
          {beside ? "one by one" : "two side by side"}
        </button>
      </h3>
      {beside ? (
        <LedgerBeside abutment={abutment} first={choice?.family ?? null} />
      ) : (
        abutment.families.map((family) => <LedgerFamily key={family.family} family={family} row={row} chosen={choice?.family === family.family} />)
      )}
      <Unknowns abutment={abutment} />
    </>
  );
}
