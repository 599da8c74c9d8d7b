import type { Draft } from "../../shared/reading.ts";
import type { Field } from "../../shared/record.ts";

const percent = (share: number): string => `${String(Math.round(share * 100))}%`;
const words = (text: string, draft: Draft, field: Field): string =>
  (draft.evidence[field]?.spans ?? []).map(({ start, end }) => `"${text.slice(start, end)}"`).join(" + ");

const line = (text: string, draft: Draft, field: Field): string | undefined => {
  const evidence = draft.evidence[field];
  if (evidence === undefined) return undefined;
  const value = JSON.stringify(draft.fields[field]);
  return `  ${field.padEnd(10)} ${value}  from ${words(text, draft, field) || "nothing said"}  by ${evidence.rule}, ${percent(evidence.sure)} sure`;
};

const FIELDS: readonly Field[] = [
  "kind",
  "component",
  "where",
  "action",
  "materials",
  "date",
  "outcome",
  "exposure",
  "cost",
  "fault",
  "due",
];

/** For each draft of a note which words gave which field, by which rule and how surely, as lines to print. */
export const explain = (text: string, drafts: readonly Draft[]): string[] =>
  drafts.flatMap((draft, at) => [
    `record ${String(at + 1)}: "${text.slice(draft.span.start, draft.span.end)}"`,
    ...FIELDS.flatMap((field) => line(text, draft, field) ?? []),
    ...(draft.doneBy === null ? [] : [`  done by    ${draft.doneBy}`]),
  ]);
