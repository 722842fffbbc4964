import type { ReactElement } from "react";
import { action } from "../state/actions";
import { Icon } from "./Icons";
import { useAction, useBench, useDesk } from "./use-bench";
import { useDropDown } from "./use-drop-down";

function Line({ id }: { readonly id: string }): ReactElement {
  const { run, label } = useAction(action(id));
  return (
    <li>
      <button className="plain" onClick={run}>
        {label}
      </button>
    </li>
  );
}

/** The name of the cast on the table; under it the others that are open, to change between them and to put them away. */
export function CastList(): ReactElement {
  const { bench } = useDesk();
  const cast = useBench((s) => s.cast);
  const casts = useBench((s) => s.casts);
  const { list, shut } = useDropDown();
  return (
    <details
      ref={list}
      className="castlist"
      onClick={(event) => {
        if (event.target instanceof Element && event.target.closest("ul button:not(.icon)")) shut();
      }}
      onKeyDown={(event) => {
        if (event.key === "Escape") shut();
      }}
    >
      <summary title="Open casts">
        <b className="castname">{cast?.name ?? "no cast"}</b>
      </summary>
      <ul aria-label="Open casts">
        {casts.map((card) => (
          <li key={card.id} className={card.id === cast?.id ? "on" : ""}>
            <button className="plain" onClick={() => void bench.opening.show(card)} aria-current={card.id === cast?.id}>
              <span>{card.name}</span>
              <span className="soft num">
                {card.jaw ?? "jaw not told"} · {card.triangles.toLocaleString("en")} triangles
              </span>
            </button>
            <button className="icon small" title={`Put ${card.name} away`} aria-label={`Put ${card.name} away`} onClick={() => void bench.opening.putAway(card)}>
              <Icon name="remove" />
            </button>
          </li>
        ))}
        <Line id="cast.open" />
        <Line id="cast.demo.lower" />
        <Line id="cast.demo.upper" />
      </ul>
    </details>
  );
}
