import { type ReactElement, useEffect, useRef } from "react";
import { ACTIONS, type Group, labelOf } from "../state/actions";
import { keyText, useBench, useDesk } from "./use-bench";

const GROUPS: readonly { group: Group; title: string }[] = [
  { group: "cast", title: "The cast" },
  { group: "view", title: "Looking" },
  { group: "tilt", title: "The tilt" },
  { group: "rod", title: "The rod" },
  { group: "edit", title: "Marks and edits" },
];
const HAND: readonly (readonly [string, string])[] = [
  ["move over the cast", "carry the rod"],
  ["drag", "turn the table"],
  ["Shift drag, or right button", "shift the table"],
  ["wheel", "nearer and farther, about the pointer"],
  ["click, gauge in hand", "leave a mark on its curve"],
  ["Alt click", "leave a mark anywhere"],
  ["drag a mark", "slide it along its gauge's curve; with Alt anywhere"],
  ["click a tooth, on the arch page", "choose it; where none is outlined, add one"],
  ["J, then click a tooth", "join it with the chosen one"],
  ["X, then click the chosen tooth", "cut it in two"],
  ["drag the chosen tooth's outline", "pull its margin"],
  ["click a section of the strip", "see it large"],
  ["move over the tilt map", "read the numbers of that tilt, once every tilt was tried"],
  ["double click a pin", "name it"],
  ["drag a tripod mark", "move it along its level"],
  ["click a tooth, on the ledger page", "open its row; the stage turns to it"],
  ["click an underlined place", "turn the stage to it"],
  ["drop a file", "open a scan"],
];

/** How long the browser may take to read a page it was handed [ms]. */
const READ_WITHIN_MS = 60_000;

/**
 * Opens a page in a tab of its own. It is fetched with the token and handed over as it is, so that the token stands in no address.
 */
function openBeside(page: Blob | null): void {
  if (!page) return;
  const address = URL.createObjectURL(page);
  const link = document.createElement("a");
  link.href = address;
  link.target = "_blank";
  link.rel = "noopener";
  link.click();
  setTimeout(() => URL.revokeObjectURL(address), READ_WITHIN_MS);
}

export function HelpSheet(): ReactElement {
  const { bench, hands } = useDesk();
  const open = useBench((s) => s.helpOpen);
  const state = useBench((s) => s);
  const dialog = useRef<HTMLDialogElement>(null);
  useEffect(() => {
    if (open && !dialog.current?.open) dialog.current?.showModal();
    if (!open) dialog.current?.close();
  }, [open]);
  const shut = (): void => bench.store.set({ helpOpen: false });
  return (
    <dialog ref={dialog} className="help" aria-label="Keys and hand movements" onClose={shut}>
      <div className="helphead">
        <b>Keys and hand movements</b>
        <button className="quiet" onClick={shut}>
          close
        </button>
      </div>
      <div className="columns">
        {GROUPS.map(({ group, title }) => (
          <div key={group}>
            <h2>{title}</h2>
            {ACTIONS.filter((each) => each.group === group).map((each) => (
              <button
                key={each.id}
                className="plain helpline"
                disabled={!each.can(state)}
                onClick={() => {
                  shut();
                  each.run(bench, hands);
                }}
              >
                <span>{labelOf(each, state)}</span>
                <kbd>{each.keys[0] ? keyText(each.keys[0]) : ""}</kbd>
              </button>
            ))}
          </div>
        ))}
        <div>
          <h2>By hand</h2>
          {HAND.map(([move, does]) => (
            <p key={move} className="helpline">
              <span>{does}</span>
              <kbd>{move}</kbd>
            </p>
          ))}
        </div>
      </div>
      <p className="helppages">
        <button className="quiet" onClick={() => void bench.readHelp("tutorial").then(openBeside)}>
          ten-minute tutorial
        </button>
        <button className="quiet" onClick={() => void bench.readHelp("rules").then(openBeside)}>
          every formula, rule and source
        </button>
      </p>
      <p className="soft care">
        What Rodwork says is an aid. The prescriber examines the patient, decides and signs. Enamel is not visible in a scan, and removing it cannot
        be undone.
      </p>
    </dialog>
  );
}
