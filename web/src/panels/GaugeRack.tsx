import type { ReactElement } from "react";
import { gaugeText } from "../values/units";
import { RodIcon } from "./Icons";
import { useBench, useDesk } from "./use-bench";

/** The gauges as they lie in the tray; the one in hand is on the felt. */
export function GaugeRack(): ReactElement | null {
  const { bench } = useDesk();
  const cast = useBench((s) => s.cast);
  const gauge = useBench((s) => s.gauge);
  const units = useBench((s) => s.units);
  if (!cast) return null;
  const choices = [null, ...cast.gaugesMm];
  return (
    <section aria-label="Gauge">
      <h2>Gauge</h2>
      <div role="radiogroup" aria-label="Gauge in hand" className="rack">
        {choices.map((size, i) => (
          <button key={size ?? 0} role="radio" aria-checked={gauge === size} className="gauge num" title={`Key ${i}`} onClick={() => bench.chooseGauge(size)}>
            <RodIcon lip={size ?? 0} />
            {size === null ? "plain rod" : gaugeText(size, units)}
          </button>
        ))}
      </div>
    </section>
  );
}
