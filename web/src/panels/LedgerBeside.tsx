import { type ReactElement, useState } from "react";
import { shortName, sideBySide, SIGNS } from "../state/ledger";
import type { Abutment, FamilyAnswer, Finding } from "../wire/abutments";
import { limitText, toldText, VERDICT_SIGNS } from "./ledger-words";
import { useBench } from "./use-bench";

/** Two choices for one abutment side by side: what each asks for, and what was found. */
export function LedgerBeside({ abutment, first }: { readonly abutment: Abutment; readonly first: string | null }): ReactElement | null {
  const { families } = abutment;
  const [left, setLeft] = useState(first ?? families[0]?.family ?? "");
  const [right, setRight] = useState(families.find(({ family }) => family !== left)?.family ?? "");
  const one = families.find(({ family }) => family === left);
  const other = families.find(({ family }) => family === right);
  if (!one || !other) return null;
  const pick = (value: string, set: (to: string) => void, label: string): ReactElement => (
    <select value={value} aria-label={label} onChange={(event) => set(event.target.value)}>
      {families.map(({ family, name, answer }) => (
        <option key={family} value={family}>
          {SIGNS[answer]} {shortName(name)}
        </option>
      ))}
    </select>
  );
  return (
    <table className="beside num">
      <thead>
        <tr>
          <td />
          <th scope="col">{pick(left, setLeft, "First clasp")}</th>
          <th scope="col">{pick(right, setRight, "Second clasp")}</th>
        </tr>
      </thead>
      <tbody>
        <tr>
          <th scope="row">answer</th>
          <td>{one.answer}</td>
          <td>{other.answer}</td>
        </tr>
        <tr>
          <th scope="row">takes</th>
          <td>{takes(one)}</td>
          <td>{takes(other)}</td>
        </tr>
        {sideBySide(one, other).map((each) => (
          <tr key={each.what}>
            <th scope="row">{each.what}</th>
            <Cell finding={each.one} />
            <Cell finding={each.other} />
          </tr>
        ))}
      </tbody>
    </table>
  );
}

const takes = ({ gauge, third, surface }: FamilyAnswer): string => `${gauge.value.toFixed(2)} mm, ${third ? `${third} ` : ""}${surface}`;

function Cell({ finding }: { readonly finding: Finding | null }): ReactElement {
  const units = useBench((s) => s.units);
  if (!finding) return <td className="soft">not asked</td>;
  const { verdict, reading, limit, because, standing } = finding;
  return (
    <td title={`${verdict}: ${because} (${standing})`}>
      <i className="sign">{VERDICT_SIGNS[verdict]}</i> {toldText(reading, units)}
      <span className="line soft">{limitText(limit, units)}</span>
    </td>
  );
}
