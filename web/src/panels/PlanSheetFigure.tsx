import { type ReactElement, useEffect, useRef, useState } from "react";
import { useBench } from "./use-bench";

/** The drawing of the plan: from above beside the parts, the whole sheet by a click. Drawn by the server from the same curves. */
export function PlanSheetFigure({ drawing }: { readonly drawing: string }): ReactElement {
  const figure = useRef<HTMLDivElement>(null);
  const dialog = useRef<HTMLDialogElement>(null);
  const [open, setOpen] = useState(false);
  const name = useBench((s) => s.cast?.name ?? "cast");
  useEffect(() => {
    const svg = figure.current?.querySelector("svg");
    const above = svg?.querySelector<SVGGElement>('[data-view="from above"]');
    if (!svg || !above) return;
    const { x, y, width, height } = above.getBBox();
    svg.setAttribute("viewBox", `${x - 2} ${y - 2} ${width + 4} ${height + 4}`);
    svg.removeAttribute("width");
    svg.removeAttribute("height");
  }, [drawing]);
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
      <button className="plain" title="The whole sheet, with both sides and the legend" aria-label="Whole drawing" onClick={() => setOpen(true)}>
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
