import { type MouseEvent, type ReactElement, useEffect, useRef, useState } from "react";
import { numbered } from "../values/tooth-number";
import { partPlace, partShown } from "../state/plan-parts";
import type { Plan } from "../wire/plan";
import { useBench, useDesk } from "./use-bench";

/** The drawing of the plan: from above beside the parts, the whole sheet by a click. Drawn by the server from the same curves. */
export function PlanSheetFigure({ drawing: made, plan }: { readonly drawing: string; readonly plan: Plan }): ReactElement {
  const { bench, hands } = useDesk();
  const figure = useRef<HTMLDivElement>(null);
  const dialog = useRef<HTMLDialogElement>(null);
  const [open, setOpen] = useState(false);
  const name = useBench((s) => s.cast?.name ?? "cast");
  const notation = useBench((s) => s.notation);
  const drawing = numbered(made, notation);
  useEffect(() => {
    const svg = figure.current?.querySelector("svg");
    const above = svg?.querySelector<SVGGElement>('[data-view="from above"]');
    if (!svg || !above) return;
    const { x, y, width, height } = above.getBBox();
    svg.setAttribute("viewBox", `${x - 2} ${y - 2} ${width + 4} ${height + 4}`);
    svg.removeAttribute("width");
    svg.removeAttribute("height");
  }, [drawing]);
  const spoken = useBench(partShown);
  useEffect(() => {
    for (const each of figure.current?.querySelectorAll("[data-part]") ?? []) each.classList.toggle("spoken", each.getAttribute("data-part") === spoken);
  }, [drawing, spoken]);
  /** A click on a part chooses it and turns the stage to it; beside the parts it opens the whole sheet. */
  const press = ({ target }: MouseEvent): void => {
    const part = target instanceof Element ? (target.closest("[data-part]")?.getAttribute("data-part") ?? null) : null;
    if (part === null) {
      setOpen(true);
      return;
    }
    bench.store.set({ chosenPart: part, step: null });
    const place = partPlace(plan, part);
    if (place) hands.show(place);
  };
  useEffect(() => {
    if (open) dialog.current?.showModal();
  }, [open]);
  const save = (): void => {
    const link = document.createElement("a");
    link.href = URL.createObjectURL(new Blob([drawing], { type: "image/svg+xml" }));
    link.download = `${name.replace(/\.[^.]*$/, "")}-plan.svg`;
    link.click();
    URL.revokeObjectURL(link.href);
  };
  return (
    <figure className="plandrawing">
      <button className="plain" title="A part: choose it. Beside the parts: the whole sheet, with both sides and the legend" aria-label="Whole drawing" onClick={press}>
        {/* An SVG document of the program itself, with every text escaped there. */}
        <div ref={figure} className="plansvg" dangerouslySetInnerHTML={{ __html: drawing }} />
      </button>
      {open && (
        <dialog ref={dialog} className="plansheet" aria-label="Drawing of the plan" onClose={() => setOpen(false)}>
          <p className="sheetbar">
            <button onClick={save}>save as SVG</button>
            <button onClick={() => dialog.current?.close()}>close</button>
          </p>
          <div className="plansvg" dangerouslySetInnerHTML={{ __html: drawing }} />
        </dialog>
      )}
    </figure>
  );
}
