import { type ReactElement, useState } from "react";
import { isGap } from "../state/teething";
import { FIRMNESSES, MOBILITIES, OPPOSING_KINDS, type OpposingSaid, RESTORATIONS, TORUS_SITES, type TorusSite } from "../values/chart";
import { toothText } from "../values/tooth-number";
import { lengthText, type Mm } from "../values/units";
import type { Fdi } from "../wire/types";
import { useBench, useDesk } from "./use-bench";

const YES_NO = ["yes", "no"] as const;
const UNKNOWN = "not known";

/** What opposes a tooth, or nothing where nothing of it is known. */
const opposed = (said: { [K in keyof OpposingSaid]?: OpposingSaid[K] | undefined }): OpposingSaid | undefined => {
  const entries = Object.entries(said).filter(([, value]) => value !== undefined);
  return entries.length > 0 ? (Object.fromEntries(entries)) : undefined;
};

interface ChoiceProps<T extends string> {
  readonly name: string;
  readonly hint?: string;
  readonly among: readonly T[];
  readonly value: T | undefined;
  readonly set: (to: T | undefined) => void;
  /** What holds where nothing was said. */
  readonly unsaid?: string;
}

/** One line of the chart: its words side by side, the one that holds in ink. */
function Choice<T extends string>({ name, hint, among, value, set, unsaid = UNKNOWN }: ChoiceProps<T>): ReactElement {
  return (
    <div className="fact" role="radiogroup" aria-label={name} title={hint}>
      <span className="soft">{name}</span>
      <span>
        {[unsaid, ...among].map((each) => {
          const on = each === (value ?? unsaid);
          return (
            <button key={each} role="radio" aria-checked={on} className="plain word" onClick={() => set(each === unsaid ? undefined : (each as T))}>
              {each}
            </button>
          );
        })}
      </span>
    </div>
  );
}

interface FigureProps {
  readonly name: string;
  readonly hint: string;
  readonly unit: string;
  readonly least: number;
  readonly most: number;
  readonly value: number | undefined;
  readonly set: (to: number | undefined) => void;
}

/** A figure that only the mouth can tell; empty: not known. Taken when the field is left. */
function Figure({ name, hint, unit, least, most, value, set }: FigureProps): ReactElement {
  const [wrong, setWrong] = useState<string | null>(null);
  const take = (text: string): void => {
    const figure = text.trim() === "" ? undefined : Number(text.replace(",", "."));
    const bad = figure !== undefined && !(figure >= least && figure <= most);
    setWrong(bad ? `${name}: “${text}” is no figure from ${least} to ${most}${unit && ` ${unit}`}; what was there stays.` : null);
    if (!bad && figure !== value) set(figure);
  };
  return (
    <>
      <label className="fact" title={hint}>
        <span className="soft">{name}</span>
        <span>
          <input
            key={value}
            className="num"
            inputMode="decimal"
            size={6}
            placeholder={UNKNOWN}
            defaultValue={value}
            aria-label={name}
            onBlur={(event) => take(event.target.value)}
            onKeyDown={(event) => {
              if (event.key === "Enter") take(event.currentTarget.value);
            }}
          />{" "}
          <span className="soft">{unit}</span>
        </span>
      </label>
      {wrong && (
        <p className="note" role="status">
          {wrong}
        </p>
      )}
    </>
  );
}

/** What the chart says of the chosen place, standing or missing. */
export function ChartFacts(): ReactElement | null {
  const { bench } = useDesk();
  const tooth = useBench((s) => s.tooth);
  const said = useBench((s) => s.document?.teeth ?? null);
  const teeth = useBench((s) => s.teeth);
  const notation = useBench((s) => s.notation);
  const cast = useBench((s) => s.cast);
  const jaw = cast?.jaw;
  if (tooth === null || !said || !cast || !jaw) return null;
  const of = said.chart.teeth[tooth] ?? {};
  const here = said.chart.places[tooth] ?? {};
  const missing = isGap(tooth, said, teeth);
  const { charting } = bench;
  return (
    <section aria-label="Chart" className="facts" data-tooth={tooth} key={tooth}>
      <h2>
        What is known of {toothText(tooth, notation)}
        {missing && ", missing"}
      </h2>
      {missing ? (
        <>
          <Choice name="replaced" among={YES_NO} value={of.replace} set={(replace) => charting.tooth(tooth, "replacement", { replace })} />
          <Choice
            name="space closed"
            hint={`Less than ${lengthText(cast.closedSpaceMm, "mm", 1)} between the neighbours`}
            among={YES_NO}
            value={of.spaceClosed}
            set={(spaceClosed) => charting.tooth(tooth, "closed space", { spaceClosed })}
          />
        </>
      ) : (
        <Standing tooth={tooth} />
      )}
      <Figure
        name="vestibule deep"
        hint="From the gingival margin, or the crest of the ridge, to the fold of the vestibule on the facial side"
        unit="mm"
        least={0}
        most={40}
        value={here.vestibuleDepthMm}
        set={(vestibuleDepthMm) => charting.place(tooth, "vestibule depth", { vestibuleDepthMm })}
      />
      <Choice name="facial frenum" among={YES_NO} value={here.facialFrenum} set={(facialFrenum) => charting.place(tooth, "frenum", { facialFrenum })} />
      {jaw === "lower" && (
        <>
          <Figure
            name="floor of mouth"
            hint="From the lingual gingival margin to the floor of the mouth, the tongue raised"
            unit="mm"
            least={0}
            most={40}
            value={here.floorDepthMm}
            set={(floorDepthMm) => charting.place(tooth, "floor of the mouth", { floorDepthMm })}
          />
          <Choice name="lingual frenum" among={YES_NO} value={here.lingualFrenum} set={(lingualFrenum) => charting.place(tooth, "lingual frenum", { lingualFrenum })} />
        </>
      )}
    </section>
  );
}

/** Miller's grades, with the figure that the rulebook takes for the first where it gives one. */
function mobilityHint(firstMm: Mm | null): string {
  return firstMm === null
    ? "Miller: I first signs, II sideways, III also up and down"
    : `Miller: I less than ${lengthText(firstMm, "mm", 0)} sideways, II more, III also up and down`;
}

function Standing({ tooth }: { readonly tooth: Fdi }): ReactElement {
  const { bench } = useDesk();
  const mobilityFirstMm = useBench((s) => s.cast?.mobilityFirstMm ?? null);
  const of = useBench((s) => s.document?.teeth.chart.teeth[tooth]) ?? {};
  const { charting } = bench;
  return (
    <>
      <Choice
        name="will"
        unsaid="stay"
        among={["to be extracted", "implant"] as const}
        value={of.will}
        set={(will) => charting.tooth(tooth, "what becomes", { will })}
      />
      {of.will === "to be extracted" && (
        <Choice name="replaced" among={YES_NO} value={of.replace} set={(replace) => charting.tooth(tooth, "replacement", { replace })} />
      )}
      <Choice
        name="mobility"
        hint={mobilityHint(mobilityFirstMm)}
        among={MOBILITIES}
        value={of.mobility}
        set={(mobility) => charting.tooth(tooth, "mobility", { mobility })}
      />
      <Figure
        name="crown : root"
        hint="Clinical crown over root in bone; 1 : 1.5 is 0.67"
        unit=": 1"
        least={0.01}
        most={10}
        value={of.crownToRoot}
        set={(crownToRoot) => charting.tooth(tooth, "crown-root ratio", { crownToRoot })}
      />
      <Choice name="restoration" among={RESTORATIONS} value={of.restoration} set={(restoration) => charting.tooth(tooth, "restoration", { restoration })} />
      <Choice
        name="shows"
        hint="When the patient speaks or smiles"
        among={YES_NO}
        value={of.aestheticZone}
        set={(aestheticZone) => charting.tooth(tooth, "aesthetic zone", { aestheticZone })}
      />
      <Choice
        name="bites on"
        hint="What meets it from the other jaw"
        among={OPPOSING_KINDS}
        value={of.opposing?.kind}
        set={(kind) => charting.tooth(tooth, "what opposes", { opposing: opposed({ ...of.opposing, kind }) })}
      />
      <Choice
        name="in contact"
        among={YES_NO}
        value={of.opposing?.contact}
        set={(contact) => charting.tooth(tooth, "contact", { opposing: opposed({ ...of.opposing, contact }) })}
      />
      <Figure
        name="clearance"
        hint="Room to the other jaw where a rest or an arm would lie, measured in the mouth; an opposing scan measures it by itself"
        unit="mm"
        least={-50}
        most={50}
        value={of.opposing?.clearanceMm}
        set={(clearanceMm) => charting.tooth(tooth, "clearance", { opposing: opposed({ ...of.opposing, clearanceMm }) })}
      />
      {tooth % 10 === 8 && <Choice name="abutment" among={YES_NO} value={of.abutment} set={(abutment) => charting.tooth(tooth, "abutment", { abutment })} />}
    </>
  );
}

const listed = (text: string, separator: RegExp): readonly string[] | undefined => {
  const words = text.split(separator).map((word) => word.trim()).filter(Boolean);
  return words.length > 0 ? words : undefined;
};

/** What belongs to the mouth as a whole, and to no tooth. */
export function MouthFacts(): ReactElement | null {
  const { bench } = useDesk();
  const mouth = useBench((s) => s.document?.teeth.chart.mouth) ?? {};
  const { charting } = bench;
  return (
    <section aria-label="The mouth" className="facts">
      <h2>The mouth</h2>
      <Figure
        name="opens"
        hint="Widest opening, between the incisal edges or ridges: what the way out of a tilted path must have"
        unit="mm"
        least={0}
        most={100}
        value={mouth.openingMm}
        set={(openingMm) => charting.mouth("opening of the mouth", { openingMm })}
      />
      <Choice
        name="allergies asked"
        hint="Whether the patient was asked about metals and resins"
        among={YES_NO}
        value={mouth.allergiesAsked}
        set={(allergiesAsked) => charting.mouth("asked about allergies", { allergiesAsked })}
      />
      <Words name="allergies" hint="To materials, such as nickel, cobalt, methacrylate; a comma between two" value={mouth.allergies?.join(", ")} set={(text) => charting.mouth("allergies", { allergies: listed(text, /,/) })} />
      <Words name="notes" hint="Anything else the laboratory or a colleague should know; no personal data" rows={2} value={mouth.notes?.join("\n")} set={(text) => charting.mouth("notes", { notes: listed(text, /\n/) })} />
    </section>
  );
}

interface WordsProps {
  readonly name: string;
  readonly hint: string;
  readonly rows?: number;
  readonly value: string | undefined;
  readonly set: (to: string) => void;
}

/** Words of a person's own, taken when the field is left. */
function Words({ name, hint, rows = 1, value = "", set }: WordsProps): ReactElement {
  return (
    <label className="fact" title={hint}>
      <span className="soft">{name}</span>
      <textarea
        key={value}
        rows={rows}
        placeholder={UNKNOWN}
        defaultValue={value}
        aria-label={name}
        onBlur={(event) => {
          if (event.target.value !== value) set(event.target.value);
        }}
      />
    </label>
  );
}

/** How the tissue of each free end feels under the finger. */
export function FreeEnds(): ReactElement | null {
  const { bench } = useDesk();
  const spaces = useBench((s) => s.teeth?.spaces ?? null);
  const firm = useBench((s) => s.document?.teeth.chart.freeEnds ?? null);
  const sides = (["right", "left"] as const).filter((side) => spaces?.some((space) => space[side] === null));
  if (!firm || sides.length === 0) return null;
  return (
    <section aria-label="Free ends" className="facts">
      <h2>Tissue of the free {sides.length > 1 ? "ends" : "end"}</h2>
      {sides.map((side) => (
        <Choice key={side} name={side} among={FIRMNESSES} value={firm[side]} set={(to) => bench.charting.freeEnd(side, to)} />
      ))}
    </section>
  );
}

const SITE_WORDS: Readonly<Record<TorusSite, string>> = { palatal: "in the palate", mandibularRight: "right, to the tongue", mandibularLeft: "left, to the tongue" };

/** The tori of the jaw: connectors go round them. */
export function Tori(): ReactElement | null {
  const jaw = useBench((s) => s.cast?.jaw ?? null);
  const said = useBench((s) => s.document?.teeth ?? null);
  if (!jaw || !said) return null;
  return (
    <section aria-label="Tori" className="facts">
      <h2>{jaw === "upper" ? "Torus" : "Tori"}</h2>
      {TORUS_SITES[jaw].map((site) => (
        <Torus key={site} site={site} />
      ))}
    </section>
  );
}

function Torus({ site }: { readonly site: TorusSite }): ReactElement {
  const { bench } = useDesk();
  const torus = useBench((s) => s.document?.teeth.chart.tori?.[site]);
  const notation = useBench((s) => s.notation);
  const words = SITE_WORDS[site];
  const set = (what: string, change: Parameters<typeof bench.charting.torus>[2]): void => bench.charting.torus(site, `${what} of the torus ${words}`, change);
  const palatal = site === "palatal";
  return (
    <>
      <Choice name={words} hint="A bony swelling that nothing rigid may press on" among={YES_NO} value={torus?.there} set={(there) => set("presence", { there })} />
      {torus?.there === "yes" && (
        <>
          {(["from", "to"] as const).map((end) => (
            <label key={end} className="fact" title={end === "from" ? "Tooth beside which it begins in front" : "Tooth beside which it ends behind"}>
              <span className="soft">{end} beside</span>
              <span>
                <select
                  aria-label={`${end} beside, ${words}`}
                  value={torus[end] ?? ""}
                  onChange={(event) => set(end === "from" ? "front" : "back", { [end]: event.target.value === "" ? undefined : Number(event.target.value) })}
                >
                  <option value="">{UNKNOWN}</option>
                  {PLACES[site].filter((tooth) => tooth !== torus[end === "from" ? "to" : "from"]).map((tooth) => (
                    <option key={tooth} value={tooth}>
                      {toothText(tooth, notation)}
                    </option>
                  ))}
                </select>
              </span>
            </label>
          ))}
          {palatal ? (
            <Figure name="wide" hint="From side to side where it is widest" unit="mm" least={0} most={50} value={torus.widthMm} set={(widthMm) => set("width", { widthMm })} />
          ) : (
            <Figure
              name="below the margins"
              hint="Along the surface from the lingual gingival margins down to its upper edge"
              unit="mm"
              least={0}
              most={50}
              value={torus.belowMarginMm}
              set={(belowMarginMm) => set("upper edge", { belowMarginMm })}
            />
          )}
        </>
      )}
    </>
  );
}

const beside = (quadrant: number): readonly Fdi[] => [1, 2, 3, 4, 5, 6, 7, 8].map((place) => 10 * quadrant + place);
const PLACES: Readonly<Record<TorusSite, readonly Fdi[]>> = { palatal: beside(1), mandibularRight: beside(4), mandibularLeft: beside(3) };
