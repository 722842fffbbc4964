import { type ReactElement, useEffect, useState } from "react";
import { planHolds } from "../state/planning";
import { toothText } from "../values/tooth-number";
import { lengthText, mm } from "../values/units";
import type { PlainFinding } from "../wire/abutments";
import { partName } from "../wire/plan";
import type { Cut, Preparation, PreparationStep } from "../wire/preparation";
import { crownLine, cutFrame, SEAT_WINDOW_MM, taken, WINDOW_MM } from "./cut-picture";
import { FindingLine } from "./PlanFindings";
import { useBench, useDesk } from "./use-bench";

const PICTURE = 76;

/** What is done in the mouth first, in working order: each cut in section, with its measure against its limit. */
export function PlanPreparation({ preparation, cuts }: { readonly preparation: Preparation; readonly cuts: readonly Cut[] }): ReactElement {
  const notation = useBench((s) => s.notation);
  const { bench } = useDesk();
  const beside = useBench((s) => s.beside?.cut != null);
  const fresh = useBench((s) => planHolds(s.planned, s));
  const [cutting, setCutting] = useState(false);
  const { steps, notPrescribed, general } = preparation;
  useEffect(() => () => bench.planning.endBeside(), [bench]);
  const lay = (): void => {
    if (beside) bench.planning.endBeside();
    else {
      setCutting(true);
      void bench.planning.besidePrepared().finally(() => setCutting(false));
    }
  };
  return (
    <article className="planpart preparation" aria-label="Mouth preparation" data-steps={steps.length}>
      <h3>
        Mouth preparation <span className="right soft">{steps.length === 0 ? "nothing to cut" : `${steps.length === 1 ? "one step" : `${steps.length} steps`} in working order`}</span>
      </h3>
      {cuts.length > 0 && <p className="soft">Sections of the crowns, the path upwards: thin as the tooth stands, thick as it shall be. Enamel is not visible in a scan, and removing it cannot be undone.</p>}
      {cuts.length > 0 && (
        <p>
          <button aria-pressed={beside} disabled={cutting || !fresh} onClick={lay} title="The cast with every cut, surveyed at this path, beside the one that stands">
            {cutting ? "cutting …" : "the cast after preparation"}
          </button>
        </p>
      )}
      <ol className="steps">
        {steps.map((step) => (
          <StepRow key={step.number} step={step} cut={cuts.find((each) => each.step === step.number) ?? null} />
        ))}
      </ol>
      {notPrescribed.length > 0 && (
        <>
          <h3>Wanted, and not prescribed</h3>
          <ul className="lines notprescribed">
            {notPrescribed.map(({ tooth, kind, why }) => (
              <li key={`${tooth} ${kind} ${why}`}>
                <b className="num">{toothText(tooth, notation)}</b> {kind}: {why}
              </li>
            ))}
          </ul>
        </>
      )}
      {general.length > 0 && (
        <>
          <h3>With every cut</h3>
          <ul className="lines">
            {general.map((each) => (
              <li key={each}>{each}</li>
            ))}
          </ul>
        </>
      )}
    </article>
  );
}

function StepRow({ step, cut }: { readonly step: PreparationStep; readonly cut: Cut | null }): ReactElement {
  const { bench, hands } = useDesk();
  const notation = useBench((s) => s.notation);
  const units = useBench((s) => s.units);
  const chosen = useBench((s) => s.step === step.number);
  const { number, tooth, what, point, heightMm, findings, cautions } = step;
  const name = toothText(tooth, notation);
  const turnTo = (): void => {
    bench.store.set({ step: number });
    hands.show(point);
    bench.liftRod(); // it would stand before the cut
  };
  return (
    <li
      className={chosen ? "step chosen" : "step"}
      data-step={number}
      aria-current={chosen}
      onMouseEnter={() => bench.speakOf(partName("cut", String(number)))}
      onMouseLeave={() => bench.speakOf(null)}
    >
      <button className="plain cutpicture" onClick={turnTo} title={`Turn the stage to step ${number} and show the cut`} aria-label={`Cut of step ${number}`}>
        {cut ? <CutPicture cut={cut} windowMm={step.kind === "rest seat" ? SEAT_WINDOW_MM : WINDOW_MM} /> : <b className="num">{name}</b>}
      </button>
      <div>
        <p>
          <button className="plain" onClick={turnTo} title="Turn the stage to this place and show the cut">
            <span className="num soft">{number} ·</span> <b className="num">{name}</b> {what}
            {heightMm !== null && step.kind !== "rest seat" && <span className="num">, {lengthText(mm(heightMm), units === "in" ? "in" : "mm", 1)} high</span>}
          </button>
        </p>
        <ul className="findings num">
          {findings.map((finding) => (
            <FindingLine key={finding.rule + finding.what} finding={finding} placed={false} beside={<LimitBar finding={finding} />} />
          ))}
        </ul>
        {cautions.map((each) => (
          <p key={each} className="caution">
            {each}
          </p>
        ))}
      </div>
    </li>
  );
}

/** How much of what may be taken is taken; nothing for a rule that is no such limit. */
function LimitBar({ finding: { reading, limit } }: { readonly finding: PlainFinding }): ReactElement | null {
  if (reading.kind !== "measured" || reading.unit !== "mm" || limit.kind !== "at-most" || typeof limit.value !== "number") return null;
  const share = reading.value / limit.value;
  return (
    <svg className="limitbar" width="46" height="9" role="img" aria-label={`${Math.round(100 * share)} % of the limit`}>
      <rect x="0.5" y="2.5" width="38" height="4" className="whole" />
      <rect x="0.5" y="2.5" width={Math.min(45, 38 * share)} height="4" className={share > 1 ? "past" : "part"} />
      <path d="M38.5 0V9" className="limit" />
    </svg>
  );
}

function CutPicture({ cut, windowMm }: { readonly cut: Cut; readonly windowMm: number }): ReactElement {
  const frame = cutFrame(windowMm, PICTURE);
  return (
    <svg width={PICTURE} height={PICTURE} aria-hidden="true">
      <path d={taken(cut.before, cut.after, frame)} className="taken" />
      <path d={crownLine(cut.before, frame)} className="before" />
      <path d={crownLine(cut.after, frame)} className="after" />
    </svg>
  );
}
