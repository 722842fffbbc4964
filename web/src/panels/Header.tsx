import type { ReactElement } from "react";
import { action } from "../state/actions";
import type { LookChoice } from "../state/bench-state";
import { totalTilt } from "../values/tilt";
import { degreesText, lengthText, type UnitChoice } from "../values/units";
import { CaseList } from "./CaseList";
import { CastList } from "./CastList";
import { Icon, type IconName } from "./Icons";
import { useAction, useBench, useDesk } from "./use-bench";

function IconButton({ id, icon }: { readonly id: string; readonly icon: IconName }): ReactElement {
  const { run, enabled, hint } = useAction(action(id));
  return (
    <button className="icon" onClick={run} disabled={!enabled} title={hint} aria-label={hint}>
      <Icon name={icon} />
    </button>
  );
}

const UNITS: readonly { value: UnitChoice; text: string }[] = [
  { value: "mm", text: "mm" },
  { value: "in", text: "inch" },
  { value: "both", text: "both" },
];
const NEXT_LOOK: Record<LookChoice, LookChoice> = { system: "light", light: "dark", dark: "system" };

export function Header(): ReactElement {
  const { bench } = useDesk();
  const cast = useBench((s) => s.cast);
  const tilt = useBench((s) => s.document?.tilt ?? null);
  const units = useBench((s) => s.units);
  const look = useBench((s) => s.look);
  return (
    <header className="bar">
      <span className="wordmark">Rodwork</span>
      <IconButton id="cast.open" icon="open" />
      <CastList />
      <CaseList />
      {cast && (
        <>
          <span className="keep">{cast.jaw ?? "jaw not told"}</span>
          <span className="soft num give">
            {cast.triangles.toLocaleString("en")} triangles · edges {lengthText(cast.edgeMm, "mm")} · ±{lengthText(cast.accuracyMm, "mm")}
          </span>
        </>
      )}
      <span className="space" />
      {cast?.frame && tilt && (
        <span className="num keep" data-testid="tilt-words">
          anterior <b>{degreesText(tilt.anterior)}</b>
          {cast.jaw && (
            <>
              {" "}
              · right <b>{degreesText(tilt.right)}</b>
            </>
          )}
          <span className="soft">
            {" "}
            · total {degreesText(totalTilt(tilt))} (reference ±{degreesText(cast.frame.upUncertaintyDeg)})
          </span>
        </span>
      )}
      <span role="radiogroup" aria-label="Units of length" className="choice">
        {UNITS.map(({ value, text }) => (
          <button key={value} role="radio" aria-checked={units === value} onClick={() => bench.chooseUnits(value)}>
            {text}
          </button>
        ))}
      </span>
      <span className="tools">
        <IconButton id="edit.undo" icon="undo" />
        <IconButton id="edit.redo" icon="redo" />
        <IconButton id="cast.picture" icon="picture" />
        <button className="icon" title={`Look: ${look}`} aria-label={`Look: ${look}`} onClick={() => bench.chooseLook(NEXT_LOOK[look])}>
          <Icon name="look" />
        </button>
        <IconButton id="help" icon="keys" />
      </span>
    </header>
  );
}
