import type { Action, ComponentId } from "../../shared/vocabulary.ts";
import type { MaterialClass, Sense } from "../lexicon/lexicon.ts";
import type { Status } from "./modality.ts";

/** The source of a deed that no known verb tells. */
export const IMPLIED = "told~";

/** An act with how it is meant; the action may still depend on what it was done with. */
export type Deed = {
  readonly from: number;
  readonly to: number;
  readonly at: number;
  readonly clause: number;
  readonly sense: Sense;
  readonly action: Action | null;
  readonly status: Status;
  readonly source: string;
  /** Told as one item of a list: what stands beyond it belongs to others. */
  readonly item?: true;
};

/** What the action of a deed may depend on. */
export type Given = {
  readonly groups: readonly MaterialClass[];
  readonly hasNew: boolean;
  readonly extra: boolean;
  readonly broken: boolean;
  /** A thing that is mostly added where there was none. */
  readonly addition: boolean;
  /** Screws, bolts and the like, that hold other things, went in. */
  readonly screwed: boolean;
  /** Put back where it was. */
  readonly back: boolean;
  /** Everything it was done with came after "with". */
  readonly withOnly: boolean;
  /** Put over a hole or crack. */
  readonly over: boolean;
  /** Measured with something. */
  readonly metered: boolean;
  readonly component: ComponentId;
};

/** "Bought a pump in January": when it was bought is not when it was put in. */
export const isPurchase = ({ sense, source }: Deed): boolean =>
  sense === "new" && /\b(?:buy|order|grab)~/u.test(source);
