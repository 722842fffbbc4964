import { type ReactElement, useState } from "react";
import { action } from "../state/actions";
import { degrees, degreesText } from "../values/units";
import { toothText } from "../values/tooth-number";
import type { PlaneOffer } from "../wire/types";
import { useAction, useBench, useDesk } from "./use-bench";

/** The opposing scan: which of the open casts it is, how it was laid, and the room over the chosen tooth. */
export function OpposingPanel(): ReactElement | null {
  const { bench } = useDesk();
  const cast = useBench((s) => s.cast);
  const casts = useBench((s) => s.casts);
  const opposing = useBench((s) => s.opposing);
  const laying = useBench((s) => s.laying);
  const shading = useBench((s) => s.shading);
  const tooth = useBench((s) => s.tooth);
  const notation = useBench((s) => s.notation);
  const show = useAction(action("view.room"));
  const [chosenBite, setBite] = useState<string | null>(null);
  const kept = useBench((s) => s.opposingKept);
  if (!cast?.frame) return null;
  const others = casts.filter(({ id }) => id !== cast.id);
  const laidBy = opposing ? opposing.biteId : chosenBite;
  // A bite scan that was put away can lay nothing any more.
  const bite = others.some(({ id }) => id === laidBy) ? laidBy : null;
  const scanOpen = opposing === null || others.some(({ id }) => id === opposing.id);
  const room = opposing?.room.find((each) => each.tooth === tooth);
  return (
    <section aria-label="Opposing teeth" data-covered={opposing?.coveredShare}>
      <h2>Opposing teeth</h2>
      <label className="unitpick">
        scan{" "}
        <select aria-label="Opposing scan" value={opposing?.id ?? ""} disabled={laying} onChange={(event) => void bench.opposing.lay(event.target.value || null, bite)}>
          <option value="">{others.length > 0 ? "none: room not known" : "none: open the scan of the other jaw too"}</option>
          {opposing && !scanOpen && <option value={opposing.id}>{opposing.file}, put away</option>}
          {others.map(({ id, name }) => (
            <option key={id} value={id}>
              {name}
            </option>
          ))}
        </select>
      </label>
      {!opposing && kept && (
        <p className="note" data-testid="opposing-kept">
          {kept} is kept and could not be laid over this cast.{" "}
          <button className="plain word" disabled={laying} onClick={() => void bench.opposing.lay(null, null)}>
            take it away
          </button>
        </p>
      )}
      {(others.length > 1 || bite !== null) && scanOpen && (
        <label className="unitpick">
          laid by{" "}
          <select
            aria-label="Bite scan"
            value={bite ?? ""}
            disabled={laying}
            onChange={(event) => {
              const chosen = event.target.value || null;
              setBite(chosen);
              if (opposing) void bench.opposing.lay(opposing.id, chosen);
            }}
          >
            <option value="">{opposing?.biteId && bite === null ? "a bite scan that was put away" : "its own frame, that of this cast"}</option>
            {others
              .filter(({ id }) => id !== opposing?.id)
              .map(({ id, name }) => (
                <option key={id} value={id}>
                  the bite scan {name}
                </option>
              ))}
          </select>
        </label>
      )}
      {laying && <p className="soft">laying it over the cast …</p>}
      {opposing && (
        <>
          <p className="soft num">
            over {(100 * opposing.coveredShare).toFixed(0)} % of what looks to it
            {opposing.bite ? ` · bite within ${opposing.bite.onCastRmsMm.toFixed(2)} and ${opposing.bite.onOpposingRmsMm.toFixed(2)} mm` : ""}
          </p>
          {room && (
            <p className="num" data-testid="room">
              least room over {toothText(room.tooth, notation)}: mesial {mm(room.mesialMm)}, middle {mm(room.middleMm)}, distal {mm(room.distalMm)}
            </p>
          )}
          <button className="quiet" aria-pressed={shading === "room"} title={show.hint} onClick={show.run}>
            {show.label}
          </button>
        </>
      )}
    </section>
  );
}

const mm = (room: number | null): string => (room === null ? "not known" : `${room.toFixed(1)} mm`);

/** Offers the occlusal plane over the teeth as the reference orientation; nothing is turned until a person takes it. */
export function PlaneOfferPanel(): ReactElement | null {
  const { bench } = useDesk();
  const cast = useBench((s) => s.cast);
  const teeth = useBench((s) => s.teeth);
  const document = useBench((s) => s.document);
  const asking = useBench((s) => s.asking);
  const picked = useBench((s) => s.planePoints);
  // An offer belongs to the teeth and the frame that it was made from.
  const [made, setMade] = useState<{ readonly offer: PlaneOffer; readonly teeth: unknown; readonly frame: unknown } | null>(null);
  if (!cast?.frame || !document || !teeth || teeth.teeth.length < 3) return null;
  const offer = made && made.teeth === teeth && made.frame === cast.frame ? made.offer : null;
  const ask = async (): Promise<void> => {
    const found = await bench.opposing.plane(null);
    if (found) setMade({ offer: found, teeth, frame: cast.frame });
  };
  const set = document.frame.upUncertaintyDeg !== undefined;
  return (
    <section aria-label="Occlusal plane">
      <h2>Reference orientation</h2>
      <p className="soft num">
        {set ? "set by you" : "from the shape of the scan"}, known within ±{degreesText(cast.frame.upUncertaintyDeg)}
      </p>
      {asking === "plane" ? (
        <p className="note" role="status">
          Click {3 - picked.length} more {picked.length === 2 ? "place" : "places"} that lie in the occlusal plane, such as an incisal edge and a molar cusp on each side.{" "}
          <button className="plain word" onClick={() => bench.store.set({ asking: null, planePoints: [] })}>
            give up
          </button>
        </p>
      ) : offer ? (
        <>
          <p className="num" data-testid="plane-offer">
            The plane over {offer.used} of {offer.teeth} teeth. Taking it turns the front {offer.anteriorDeg >= 0 ? "down" : "up"} by{" "}
            {degreesText(degrees(Math.abs(offer.anteriorDeg)))} (±{degreesText(offer.anteriorErrorDeg)}) and the right side {offer.rightDeg >= 0 ? "down" : "up"} by{" "}
            {degreesText(degrees(Math.abs(offer.rightDeg)))} (±{degreesText(offer.rightErrorDeg)}).
          </p>
          {offer.ask && <p className="note">Too few teeth tell it: set it by three places instead.</p>}
          <button className="quiet" onClick={() => bench.takePlane(offer)}>
            take it as the reference
          </button>
          <button className="quiet" onClick={() => setMade(null)}>
            leave it
          </button>
        </>
      ) : (
        <>
          <button className="quiet" onClick={() => void ask()}>
            look at the plane over the teeth
          </button>
          <button className="quiet" onClick={() => bench.store.set({ asking: "plane", planePoints: [] })}>
            set it by three places
          </button>
        </>
      )}
    </section>
  );
}

