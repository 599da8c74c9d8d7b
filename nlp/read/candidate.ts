import type { Kind } from "../../shared/vocabulary.ts";
import type { ComponentRef } from "../lexicon/components.ts";
import type { Telling } from "./tellings.ts";

/** One record that may be written down: where it is told, of what kind, and of which mention. */
export type Candidate = {
  readonly telling: Telling;
  readonly kind: Kind;
  readonly ref: ComponentRef;
  readonly sureKind: number;
  readonly sureAim: number;
  /** Whether it is of the likeliest kind and thing there, or named in one breath with that. */
  readonly leads: boolean;
  /** How sure the likeliest there is. */
  readonly lead: number;
};

/** How sure of the kind and the thing together. */
export const sureOf = ({ sureKind, sureAim }: Pick<Candidate, "sureKind" | "sureAim">): number =>
  sureKind * sureAim;
