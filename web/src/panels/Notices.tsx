import type { ReactElement } from "react";
import { action } from "../state/actions";
import { problemText } from "../values/tooth-number";
import { useAction, useBench, useDesk } from "./use-bench";

/** What went wrong: what happened, what to do, and the code small. The cast of before stays on the bench. */
export function ProblemNotice(): ReactElement | null {
  const { bench } = useDesk();
  const problem = useBench((s) => s.problem);
  const notation = useBench((s) => s.notation);
  const connected = useBench((s) => s.connected);
  if (!problem && connected) return null;
  return (
    <div className="problem" role="alert">
      {problem ? (
        <>
          <p>
            <b>{problemText(problem, notation)}</b>
          </p>
          {problem.advice && <p>{problem.advice}</p>}
          <code>{problem.code}</code>
          <button className="quiet right" onClick={() => bench.store.set({ problem: null })}>
            close
          </button>
        </>
      ) : (
        <p>
          <b>The Rodwork program does not answer.</b> Trying again. If it was closed, start it with ./rodwork and open the address it prints.
        </p>
      )}
    </div>
  );
}

function Do({ id }: { readonly id: string }): ReactElement {
  const { run, label, hint } = useAction(action(id));
  return (
    <button onClick={run} title={hint}>
      {label}
    </button>
  );
}

/** The empty light table. */
export function EmptyTable(): ReactElement | null {
  const cast = useBench((s) => s.cast);
  const busy = useBench((s) => s.busy);
  if (cast || busy) return null;
  return (
    <div className="empty">
      <p>Lay a scan on the table: drop the file here, or</p>
      <p>
        <Do id="cast.open" /> <Do id="cast.demo.lower" /> <Do id="cast.demo.upper" />
      </p>
      <p className="soft">STL, PLY, OBJ, 3MF, glTF or OFF, also gzipped or zipped. Nothing leaves this machine.</p>
    </div>
  );
}

export function Busy(): ReactElement | null {
  const busy = useBench((s) => s.busy);
  return busy ? (
    <div className="busy" role="status">
      {busy}
    </div>
  ) : null;
}

/** When the frame could not be told from the shape: two questions, answered on the cast itself. */
export function FrameAsk({ fromAbove }: { readonly fromAbove: () => void }): ReactElement | null {
  const { bench } = useDesk();
  const asking = useBench((s) => s.asking);
  const problem = useBench((s) => s.cast?.frameProblem ?? null);
  const framed = useBench((s) => s.cast?.frame !== null);
  if (!asking || asking === "plane") return null;
  return (
    <div className={asking === "front" ? "ask through" : "ask"} role="group" aria-label="Orientation">
      {problem && !framed && asking === "up" && <p className="soft">{problem.message}</p>}
      {asking === "up" ? (
        <>
          <p>
            <b>1 of 2.</b> Turn the cast by dragging until you look straight down on the biting surfaces.
          </p>
          <button onClick={fromAbove}>This is from above</button>
        </>
      ) : (
        <p>
          <b>2 of 2.</b> Now click the cast at its front, between the central incisors.
        </p>
      )}
      {framed && (
        <button className="quiet" onClick={() => bench.store.set({ asking: null })}>
          keep it as it was
        </button>
      )}
    </div>
  );
}
