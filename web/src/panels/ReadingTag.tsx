import type { ReactElement } from "react";
import { readingWords } from "./reading-words";
import { useBench } from "./use-bench";

/** The tag beside the rod. The stage moves it; it only says what was read. */
export function ReadingTag(): ReactElement | null {
  const reading = useBench((s) => s.carried?.reading ?? null);
  const triangle = useBench((s) => s.carried?.triangle);
  const units = useBench((s) => s.units);
  const cast = useBench((s) => s.cast);
  if (!reading || !cast) return null;
  const { depth, fits, where, room, doubts } = readingWords(reading, units, cast);
  return (
    <div className="tag num" data-testid="tag" data-point={reading.point.join(" ")} data-triangle={triangle} data-depth={reading.depthMm}>
      <b>{depth}</b> <span className="soft">±{reading.uncertaintyMm.toFixed(2)}</span>
      <br />
      {fits}
      {where && (
        <>
          <br />
          <span className="soft">{where}</span>
        </>
      )}
      {room && (
        <>
          <br />
          <span data-testid="tag-room">{room}</span>
        </>
      )}
      {doubts.map((doubt) => (
        <span key={doubt} className="doubt">
          {doubt}
        </span>
      ))}
    </div>
  );
}

/** The same for those who hear the screen. */
export function SpokenReading(): ReactElement {
  const reading = useBench((s) => s.carried?.reading ?? null);
  const units = useBench((s) => s.units);
  const cast = useBench((s) => s.cast);
  const words = reading && cast ? readingWords(reading, units, cast) : null;
  return (
    <div className="unseen" aria-live="polite">
      {words ? [words.depth, words.fits, words.where, words.room, ...words.doubts].filter(Boolean).join(", ") : ""}
    </div>
  );
}
