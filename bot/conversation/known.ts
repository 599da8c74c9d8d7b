import type { ComponentId } from "../../shared/vocabulary.ts";
import type { Turn } from "./turn.ts";

/** Whether anything was ever told of a thing. */
export const isKnown = ({ store }: Turn, component: ComponentId): boolean =>
  store.history.records({ components: [component], limit: 1 }).length > 0;
