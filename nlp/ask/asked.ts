import type { AskKind, Focus } from "../../shared/memory/query.ts";

/** What kind of question it is, and by which rule. */
export type Asked =
  | {
      readonly kind: AskKind;
      readonly focus?: Focus;
      /** Which of the kind is asked for, where it has several. */
      readonly of?: "failures" | "work" | "all" | "dearest" | "longest" | "shortest";
      readonly rule: string;
    }
  | { readonly kind: "decide" | "ready"; readonly rule: string };

/** The kind that words show: `when` fits and `unless` does not. */
export type Rule = Asked & { readonly when: RegExp; readonly unless?: RegExp };
