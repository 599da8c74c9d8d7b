import type { Draft } from "../../shared/reading.ts";
import { IMPLIED } from "./deed.ts";

const usesOf = ({ fields }: Draft): string =>
  fields.exposure.map(({ count, unit }) => `${String(count)} ${unit}`).join(", ");

/** Whether work is told by no deed and with nothing but the use that a look at the same thing tells as well. */
const tellsOnlyUse = (draft: Draft, beside: readonly (Draft | undefined)[]): boolean => {
  const { fields, evidence } = draft;
  return (
    fields.kind === "repair" &&
    evidence.action?.rule.endsWith(`:${IMPLIED}`) === true &&
    fields.materials.length === 0 &&
    fields.cost === null &&
    fields.exposure.length > 0 &&
    beside.some(
      (other) =>
        other?.fields.kind === "check" &&
        other.fields.component === fields.component &&
        usesOf(other) === usesOf(draft),
    )
  );
};

/** "Third trip now on the shower and not a drop": a look after so much use, and no work. */
export const withoutOnlyUse = (drafts: readonly Draft[]): readonly Draft[] =>
  drafts.filter((draft, at) => !tellsOnlyUse(draft, [drafts[at - 1], drafts[at + 1]]));
