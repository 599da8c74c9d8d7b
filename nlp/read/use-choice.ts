import type { UseUnit } from "../../shared/record.ts";
import type { Amount } from "./amount.ts";

/** An amount that may tell use of the rig, and whether the rules take it for that. */
export type UseChoice = Amount & { readonly what: UseUnit; readonly ruled: boolean; readonly rule: string };
