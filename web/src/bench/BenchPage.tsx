import { type DragEvent, type ReactElement, useEffect, useMemo, useRef, useState } from "react";
import { GaugeRack } from "../panels/GaugeRack";
import { Header } from "../panels/Header";
import { HelpSheet } from "../panels/HelpSheet";
import { Pages, PageTurn } from "../panels/Pages";
import { ParallelStrip } from "../panels/ParallelStrip";
import { Pins } from "../panels/Pins";
import { SpokenReading } from "../panels/ReadingTag";
import { TiltPanel } from "../panels/TiltPanel";
import { TripodPanel } from "../panels/TripodPanel";
import { DeskContext } from "../panels/use-bench";
import { ACTIONS, type Hands, keyName } from "../state/actions";
import type { Bench } from "../state/bench";
import { CastStage } from "./CastStage";
import { pictureName, save, sheet } from "./picture";
import type { StageDriver } from "./stage-driver";

/** Keys belong to a field while it is written in; Escape leaves it. */
const writing = (target: EventTarget | null): boolean =>
  target instanceof HTMLElement && target.matches("input:not([type=checkbox]), select, textarea");
/** All keys belong to an open dialog, Escape to close it among them. */
const inDialog = (target: EventTarget | null): boolean => target instanceof HTMLElement && target.closest("dialog[open]") !== null;

export function BenchPage({ bench }: { readonly bench: Bench }): ReactElement {
  const driver = useRef<StageDriver | null>(null);
  const file = useRef<HTMLInputElement>(null);
  const [over, setOver] = useState(false);

  const hands = useMemo<Hands>(
    () => ({
      look: (side) => driver.current?.look(side),
      fit: () => driver.current?.fit(),
      show: (place) => driver.current?.show(place),
      alongRod: () => driver.current?.alongRod(),
      slide: (steps) => driver.current?.slide(steps),
      nextCurve: () => driver.current?.nextCurve(),
      pickFile: () => file.current?.click(),
      savePicture: () => {
        const made = driver.current;
        const state = bench.store.get();
        if (made) save(sheet(made.stage.picture(), state, made.palette), pictureName(state));
      },
    }),
    [bench],
  );

  useEffect(() => {
    const press = (event: KeyboardEvent): void => {
      const name = keyName(event);
      if (inDialog(event.target) || (writing(event.target) && name !== "Escape")) return;
      const found = ACTIONS.find((each) => each.keys.includes(name) && each.can(bench.store.get()));
      if (!found) return;
      event.preventDefault();
      found.run(bench, hands);
    };
    window.addEventListener("keydown", press);
    return () => window.removeEventListener("keydown", press);
  }, [bench, hands]);

  const open = (given: File | undefined): void => {
    if (given) void bench.opening.openFile(given);
  };
  const drop = (event: DragEvent): void => {
    event.preventDefault();
    setOver(false);
    open(event.dataTransfer.files[0]);
  };

  return (
    <DeskContext value={{ bench, hands }}>
      <div
        className={over ? "bench over-file" : "bench"}
        onDragOver={(event) => {
          event.preventDefault();
          setOver(true);
        }}
        onDragLeave={() => setOver(false)}
        onDrop={drop}
      >
        <Header />
        <aside className="left">
          <TiltPanel />
          <Pins />
          <TripodPanel />
          <GaugeRack />
        </aside>
        <CastStage bench={bench} driverRef={driver} />
        <ParallelStrip />
        <aside className="right">
          <PageTurn />
          <Pages />
        </aside>
        <HelpSheet />
        <SpokenReading />
        <input
          ref={file}
          type="file"
          hidden
          aria-label="Scan file"
          onChange={(event) => {
            open(event.target.files?.[0]);
            event.target.value = "";
          }}
        />
      </div>
    </DeskContext>
  );
}
