import type { ComponentId } from "../vocabulary.ts";
import table from "./families.json" with { type: "json" };

const FAMILIES = table.kin as readonly (readonly ComponentId[])[];

/** The components that a careless word for this one may mean, without itself. */
export const kinOf = (component: ComponentId): readonly ComponentId[] =>
  [...new Set(FAMILIES.filter((family) => family.includes(component)).flat())].filter(
    (kin) => kin !== component,
  );
