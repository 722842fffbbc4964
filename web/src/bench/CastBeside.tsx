import { type ReactElement, type RefObject, useEffect, useRef } from "react";
import type { Beside, NamedTilt } from "../state/bench-state";
import type { Bench } from "../state/bench";
import { useBench } from "../panels/use-bench";
import { degreesText } from "../values/units";
import { PointerHand } from "./pointer";
import { StageDriver } from "./stage-driver";

const DARK_QUERY = "(prefers-color-scheme: dark)";

/** The same cast at a second tilt, or with the cuts of its mouth preparation, on the right half of the table; both halves are looked at from the same side. */
export function CastBeside({ bench, driverRef }: { readonly bench: Bench; readonly driverRef: RefObject<StageDriver | null> }): ReactElement | null {
  const beside = useBench((s) => s.beside);
  const teeth = useBench((s) => s.teeth);
  if (!beside) return null;
  // Another cast ends the comparison; other teeth do not touch it.
  return <Half key={beside.to.id + String(teeth === null)} bench={bench} driverRef={driverRef} from={beside.from} to={beside.to} cut={beside.cut} />;
}

function Half(props: { readonly bench: Bench; readonly driverRef: RefObject<StageDriver | null>; readonly from: NamedTilt; readonly to: NamedTilt; readonly cut: Beside["cut"] }): ReactElement {
  const { bench, driverRef, from, to, cut } = props;
  const canvas = useRef<HTMLCanvasElement>(null);
  const half = useRef<HTMLDivElement>(null);
  const { tilt } = to;
  useEffect(() => {
    const main = driverRef.current;
    if (!canvas.current || !main) return undefined;
    const other = bench.beside(tilt, cut);
    const driver = new StageDriver(canvas.current, other);
    const hand = new PointerHand(driver, true);
    const scheme = window.matchMedia(DARK_QUERY);
    const follow = (): void => driver.setSystemDark(scheme.matches);
    scheme.addEventListener("change", follow);
    follow();
    main.onView = (view) => driver.setView(view);
    driver.onView = (view) => main.setView(view);
    driver.stage.onDrawn = () => {
      const { survey } = other.store.get();
      if (half.current && survey) half.current.dataset["surveyed"] = survey.head.tilt.join(" ");
    };
    const stop = bench.store.subscribe(() => {
      const { gauge, look } = bench.store.get();
      if (other.store.get().gauge !== gauge || other.store.get().look !== look) other.store.set({ gauge, look });
    });
    const size = new ResizeObserver(([entry]) => {
      if (!entry) return;
      driver.stage.resize(Math.round(entry.contentRect.width), Math.round(entry.contentRect.height));
      main.fit();
    });
    size.observe(canvas.current);
    return () => {
      main.onView = () => undefined;
      stop();
      size.disconnect();
      scheme.removeEventListener("change", follow);
      hand.dispose();
      driver.dispose();
      other.leave();
    };
  }, [bench, driverRef, tilt, cut]);
  return (
    <>
      <Name at={from} className="besidename first" />
      <Name at={to} className="besidename" />
      <div ref={half} className="castbeside" data-testid="beside">
        <canvas ref={canvas} aria-label={`The cast at ${to.name}`} />
      </div>
    </>
  );
}

function Name({ at, className }: { readonly at: NamedTilt; readonly className: string }): ReactElement {
  return (
    <div className={className}>
      <b>{at.name}</b>{" "}
      <span className="num soft">
        {degreesText(at.tilt.anterior)} / {degreesText(at.tilt.right)}
      </span>
    </div>
  );
}
