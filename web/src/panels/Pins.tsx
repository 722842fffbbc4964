import { type ReactElement, useState } from "react";
import { action } from "../state/actions";
import type { NamedTilt } from "../state/bench-state";
import { REFERENCE, sameTilt } from "../values/tilt";
import { degreesText } from "../values/units";
import { Icon } from "./Icons";
import { PinsCompared } from "./PinsCompared";
import { useAction, useBench, useDesk } from "./use-bench";

const HERE: NamedTilt = { id: "reference", name: "Reference", tilt: REFERENCE };

/** The orientations that a person keeps, with the reference always among them; two of them can be laid side by side. */
export function Pins(): ReactElement | null {
  const { bench } = useDesk();
  const document = useBench((s) => s.document);
  const framed = useBench((s) => !!s.cast?.frame);
  const toothed = useBench((s) => (s.teeth?.teeth.length ?? 0) > 0);
  const pin = useAction(action("tilt.pin"));
  const [naming, setNaming] = useState<string | null>(null);
  const [ticked, setTicked] = useState<readonly string[]>([]);
  if (!document || !framed) return null;
  const rows: readonly NamedTilt[] = [HERE, ...document.pins];
  const chosen = ticked.flatMap((id) => rows.filter((row) => row.id === id));
  const tick = (id: string): void => setTicked(ticked.includes(id) ? ticked.filter((each) => each !== id) : [...ticked, id].slice(-2));
  const [first, second] = chosen;
  const name = (id: string, wanted: string): void => {
    bench.namePin(id, wanted);
    setNaming(null);
  };
  return (
    <section aria-label="Pins" className="pins">
      <h2>Pins</h2>
      <ul>
        {rows.map((row) => (
          <li key={row.id} className={sameTilt(row.tilt, document.tilt) ? "on" : ""} data-pin={row.name}>
            {toothed && (
              <input type="checkbox" checked={ticked.includes(row.id)} aria-label={`Compare ${row.name}`} title="Tick two to compare them" onChange={() => tick(row.id)} />
            )}
            {naming === row.id ? (
              <input
                autoFocus
                aria-label="Name of the pin"
                defaultValue={row.name}
                onBlur={(event) => name(row.id, event.target.value)}
                onKeyDown={(event) => {
                  if (event.key === "Enter") event.currentTarget.blur();
                }}
              />
            ) : (
              <button
                className="plain"
                title={row === HERE ? "Set the cast at this tilt" : "Set the cast at this tilt; a double click names it"}
                onClick={() => bench.jumpTo(row.tilt)}
                onDoubleClick={() => setNaming(row === HERE ? null : row.id)}
              >
                <span className="pinname">{row.name}</span>
                <span className="num soft">
                  {degreesText(row.tilt.anterior)} / {degreesText(row.tilt.right)}
                </span>
              </button>
            )}
            {row !== HERE && (
              <button className="icon small" aria-label={`Remove pin ${row.name}`} title="Remove" onClick={() => bench.removePin(row.id)}>
                <Icon name="remove" />
              </button>
            )}
          </li>
        ))}
      </ul>
      <button className="quiet" onClick={pin.run} title={pin.hint}>
        pin this tilt
      </button>
      {toothed && document.pins.length > 0 && chosen.length < 2 && <p className="soft hint">Tick two to compare them.</p>}
      {first && second && <PinsCompared key={`${first.id} ${second.id}`} from={first} to={second} close={() => setTicked([])} />}
    </section>
  );
}
