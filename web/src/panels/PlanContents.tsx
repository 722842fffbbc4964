import { type ReactElement, useRef } from "react";

/** Where the plan page goes to, by the names that its articles bear. */
const STOPS: readonly { readonly word: string; readonly article: string }[] = [
  { word: "connector", article: "Major connector" },
  { word: "teeth", article: "Tooth " },
  { word: "in the mouth", article: "Mouth preparation" },
  { word: "another plan", article: "Another plan" },
  { word: "laboratory", article: "Prescription" },
];

/** The parts of a long page in one row, which stays in sight; a click goes there. */
export function PlanContents(): ReactElement {
  const row = useRef<HTMLElement>(null);
  const goTo = (article: string): void => {
    const at = row.current?.closest("section")?.querySelector(`article[aria-label^="${article}"]`);
    at?.scrollIntoView({ block: "start" });
  };
  return (
    <nav ref={row} className="plancontents" aria-label="Parts of the plan">
      {STOPS.map(({ word, article }) => (
        <button key={word} className="plain" onClick={() => goTo(article)}>
          {word}
        </button>
      ))}
    </nav>
  );
}
