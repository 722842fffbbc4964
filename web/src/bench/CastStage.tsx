import { type ReactElement, type RefObject, useEffect, useRef, useState } from "react";
import { webglMissing } from "../scene/webgl";
import type { Bench } from "../state/bench";
import { cutShown } from "../state/plan-parts";
import { Legend } from "../panels/Legend";
import { Busy, EmptyTable, FrameAsk, ProblemNotice } from "../panels/Notices";
import { ReadingTag } from "../panels/ReadingTag";
import { AddTooth, ToothNumbers } from "../panels/ToothLabels";
import { useBench } from "../panels/use-bench";
import { CastBeside } from "./CastBeside";
import type { Tripod } from "../wire/tripod";
import { PointerHand } from "./pointer";
import { drawnClasp, gripsFor } from "./stage-model";
import { StageDriver } from "./stage-driver";
import { tripodPlaces } from "./stage-model";

const NO_MARKS: Tripod["marks"] = [];
const DARK_QUERY = "(prefers-color-scheme: dark)";

/** The light table: the canvas, and what lies over it. */
export function CastStage({ bench, driverRef }: { readonly bench: Bench; readonly driverRef: RefObject<StageDriver | null> }): ReactElement {
  const canvas = useRef<HTMLCanvasElement>(null);
  const over = useRef<HTMLDivElement>(null);
  const [missing] = useState(webglMissing);
  const surveyed = useBench((s) => s.survey?.head.tilt.join(" "));
  const exact = useBench((s) => s.survey?.head.exact);
  const beside = useBench((s) => s.beside !== null);
  const marks = useBench((s) => s.document?.marks ?? null);
  const tripod = useBench((s) => (s.picking ? NO_MARKS : (s.document?.tripod?.marks ?? NO_MARKS)));

  useEffect(() => {
    if (missing || !canvas.current) return undefined;
    const made = new StageDriver(canvas.current, bench);
    const hand = new PointerHand(made);
    driverRef.current = made;
    made.stage.onDrawn = () => {
      if (!over.current) return;
      placeLabels(over.current, made, bench);
      tellDrawn(over.current, made, bench);
    };
    const scheme = window.matchMedia(DARK_QUERY);
    const follow = (): void => made.setSystemDark(scheme.matches);
    scheme.addEventListener("change", follow);
    follow();
    let first = true;
    const size = new ResizeObserver(([entry]) => {
      if (!entry) return;
      made.stage.resize(Math.round(entry.contentRect.width), Math.round(entry.contentRect.height));
      if (first) made.fit();
      first = false;
    });
    size.observe(canvas.current);
    return () => {
      driverRef.current = null;
      scheme.removeEventListener("change", follow);
      size.disconnect();
      hand.dispose();
      made.dispose();
    };
  }, [bench, driverRef, missing]);

  const fromAbove = (): void => {
    const { document } = bench.store.get();
    if (!driverRef.current || !document) return;
    // The document learns it with the front, as one edit; until then it is only looked at.
    bench.store.set({ asking: "front", document: { ...document, frame: { ...document.frame, up: driverRef.current.towardsViewer() } } });
  };

  return (
    <main className={beside ? "table split" : "table"} aria-label="Cast" data-surveyed={surveyed} data-exact={exact}>
      {missing ? (
        <div className="empty" role="alert">
          <p>
            <b>{missing}</b>
          </p>
          <p>Use a current Firefox, Chromium or Safari, and allow hardware or software WebGL in its settings. Measuring works without it: rodwork survey on the command line.</p>
        </div>
      ) : (
        <canvas ref={canvas} tabIndex={0} aria-label="The cast under the rod. Keys are listed under ?." />
      )}
      <div ref={over} className="over">
        <ReadingTag />
        <ToothNumbers />
        <AddTooth />
        {tripod.map((_, which) => (
          <span key={which} className="pinlabel num tripodlabel" data-tripod={which}>
            {which + 1}
          </span>
        ))}
        {marks?.map((mark) => (
          <span key={mark.id} className="pinlabel num" data-mark={mark.id}>
            {mark.name}
          </span>
        ))}
      </div>
      <CastBeside bench={bench} driverRef={driverRef} />
      <EmptyTable />
      <FrameAsk fromAbove={fromAbove} />
      <Legend />
      <Busy />
      <ProblemNotice />
    </main>
  );
}

/** Writes down which survey the picture shows, for tests and measurements. Done by hand, for it belongs to the picture alone. */
function tellDrawn(over: HTMLElement, driver: StageDriver, bench: Bench): void {
  const state = bench.store.get();
  const { survey, coarse } = state;
  over.dataset["drawn"] = survey ? `${survey.head.tilt.join(" ")} ${survey.head.exact && !coarse ? "exact" : "coarse"}` : "";
  over.dataset["arms"] = drawnClasp(state)?.family ?? "";
  over.dataset["cut"] = String(cutShown(state)?.step ?? "");
  over.dataset["grips"] = gripsFor(state)
    .map(({ point }) => driver.canvasPlace(point).map(Math.round).join(","))
    .join(" ");
  over.dataset["knots"] = driver.knots.map((knot) => driver.canvasPlace(knot).map(Math.round).join(" ")).join(", ");
}

/** Puts the tag beside the rod and each number beside its mark. Done by hand: this happens with every picture. */
function placeLabels(over: HTMLElement, driver: StageDriver, bench: Bench): void {
  const { carried, document } = bench.store.get();
  const put = (element: HTMLElement, x: number, y: number): void => {
    element.style.transform = `translate(${Math.round(x)}px, ${Math.round(y)}px)`;
  };
  const tag = over.querySelector<HTMLElement>(".tag");
  if (tag && carried) {
    const [x, y] = driver.canvasPlace(carried.point);
    const left = x + 26 + tag.offsetWidth > over.clientWidth ? x - 26 - tag.offsetWidth : x + 26;
    const inside = Math.max(6, Math.min(over.clientWidth - tag.offsetWidth - 6, left));
    put(tag, inside, Math.max(6, Math.min(over.clientHeight - tag.offsetHeight - 6, y + 14)));
  }
  const adding = bench.store.get().adding;
  const ask = over.querySelector<HTMLElement>(".addtooth");
  if (ask && adding) {
    const [x, y] = driver.canvasPlace(adding.point);
    put(ask, Math.max(6, Math.min(over.clientWidth - ask.offsetWidth - 6, x - ask.offsetWidth / 2)), Math.max(6, y - ask.offsetHeight - 12));
  }
  for (const { tooth, top, axis } of bench.store.get().teeth?.teeth ?? []) {
    const label = over.querySelector<HTMLElement>(`[data-tooth="${tooth}"]`);
    if (!label) continue;
    const [x, y] = driver.canvasPlace(top);
    put(label, x - label.offsetWidth / 2, y - label.offsetHeight / 2);
    label.style.visibility = driver.facesViewer(axis) ? "visible" : "hidden";
  }
  tripodPlaces(bench.store.get()).forEach((point, which) => {
    const label = over.querySelector<HTMLElement>(`[data-tripod="${which}"]`);
    const [x, y] = driver.canvasPlace(point);
    if (label) put(label, x + 11, y - 20);
  });
  for (const mark of document?.marks ?? []) {
    const label = over.querySelector<HTMLElement>(`[data-mark="${mark.id}"]`);
    const [x, y] = driver.canvasPlace(mark.point);
    if (label) put(label, x + 9, y - 18);
  }
}
