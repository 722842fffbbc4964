import type { ReactElement } from "react";
import { fitsStill, type Mark } from "../state/document";
import { gaugeText, lengthText } from "../values/units";
import { Icon } from "./Icons";
import { readingWords } from "./reading-words";
import { useBench, useDesk } from "./use-bench";

function MarkRow({ mark }: { readonly mark: Mark }): ReactElement {
  const { bench } = useDesk();
  const reading = useBench((s) => s.markReadings.get(mark.id));
  const selected = useBench((s) => s.selected === mark.id);
  const units = useBench((s) => s.units);
  const cast = useBench((s) => s.cast);
  const words = reading && cast ? readingWords(reading, units, cast) : null;
  return (
    <li className={selected ? "mark on" : "mark"}>
      <button className="plain" aria-pressed={selected} onClick={() => bench.select(mark.id)}>
        <span className="number">{mark.name}</span>
        <span className="num">
          <b>{reading ? (reading.capped ? "> " : "") + lengthText(reading.depthMm, units) : "…"}</b>
          <span className="soft line">{mark.gaugeMm === null ? "placed freely" : `left with ${gaugeText(mark.gaugeMm, units)}`}</span>
          {words?.where && <span className="soft line">{words.where}</span>}
          {words?.doubts.map((doubt) => (
            <span key={doubt} className="doubt line">
              {doubt}
            </span>
          ))}
        </span>
      </button>
      <button className="icon small" aria-label={`Remove mark ${mark.name}`} title="Remove (Delete)" onClick={() => bench.removeMark(mark.id)}>
        <Icon name="remove" />
      </button>
      {!fitsStill(mark, reading) && (
        <button className="seat" onClick={() => void bench.seatMark(mark.id)} title="Move the mark back onto its gauge, in the section through its place (S)">
          <Icon name="seat" /> {reading?.fitsText}: seat again
        </button>
      )}
    </li>
  );
}

export function Marks(): ReactElement | null {
  const marks = useBench((s) => s.document?.marks ?? null);
  if (!marks) return null;
  return (
    <section aria-label="Marks" className="grow">
      <h2>Marks</h2>
      {marks.length === 0 ? (
        <p className="soft">Take a gauge, bring the rod to its curve and click: the mark stays on the tooth when the tilt changes.</p>
      ) : (
        <ol className="marks">
          {marks.map((mark) => (
            <MarkRow key={mark.id} mark={mark} />
          ))}
        </ol>
      )}
    </section>
  );
}
