import type { BorderMove, ChoicesSaid, ConnectorKind, RestKind, RestSide } from "../wire/plan";
import type { Fdi } from "../wire/types";
import { armsSaid, type ClaspChoice } from "./ledger";

/** A rest that holds against the lifting of a base. */
export interface IndirectChoice {
  readonly kind: RestKind;
  readonly side: RestSide;
}

export type Indirect = Readonly<Record<string, IndirectChoice | "none">>;

/** What a person changed of the plan beside the clasps, which are chosen in the ledger. Immutable. */
export interface PlanChoices {
  readonly rests: Readonly<Record<string, { readonly kind: RestKind; readonly side: RestSide }>>;
  readonly connector: ConnectorKind | null;
  /** Teeth that shall carry nothing. */
  readonly notUsed: readonly Fdi[];
  /** Teeth that shall carry without a clasp. */
  readonly unclasped: readonly Fdi[];
  readonly moves: readonly BorderMove[];
  /** Indirect retainers by tooth: added, or the proposed one taken away. Missing, as in what an older bench kept: as proposed. */
  readonly indirect?: Indirect;
}

export const NOTHING_CHOSEN: PlanChoices = { rests: {}, connector: null, notUsed: [], unclasped: [], moves: [] };

/** The families chosen in the ledger, by tooth: a tooth between two spaces has two rows and one clasp, that chosen last. */
export const claspsByTooth = (clasps: Readonly<Record<string, ClaspChoice>>): Readonly<Record<string, string>> =>
  Object.fromEntries(Object.entries(clasps).map(([row, { family }]) => [row.split(" ")[0]!, family]));

/** All that was chosen, as the server wants it; arms shaped by hand among it. */
export function choicesSaid(plan: PlanChoices, clasps: Readonly<Record<string, ClaspChoice>>): ChoicesSaid {
  const arms = armsSaid(clasps);
  return {
    rests: plan.rests,
    clasps: { ...claspsByTooth(clasps), ...Object.fromEntries(plan.unclasped.map((tooth) => [tooth, "none"])) },
    ...(plan.connector ? { connector: plan.connector } : {}),
    notUsed: plan.notUsed,
    moves: plan.moves,
    ...(Object.keys(arms).length > 0 ? { arms } : {}),
    ...(plan.indirect && Object.keys(plan.indirect).length > 0 ? { indirect: plan.indirect } : {}),
  };
}

/** The same list with an element put in or taken out. */
export const toggled = <T>(list: readonly T[], one: T): readonly T[] => (list.includes(one) ? list.filter((each) => each !== one) : [...list, one]);

/** How many things a person changed. */
export const changes = ({ rests, connector, notUsed, unclasped, moves, indirect = {} }: PlanChoices): number =>
  Object.keys(rests).length + (connector ? 1 : 0) + notUsed.length + unclasped.length + moves.length + Object.keys(indirect).length;

/** The indirect retainers with one chosen, taken away, or as proposed again (null). */
export function withIndirect(indirect: Indirect, tooth: Fdi, to: IndirectChoice | "none" | null): Indirect {
  const others = Object.fromEntries(Object.entries(indirect).filter(([key]) => key !== String(tooth)));
  return to === null ? others : { ...others, [tooth]: to };
}
