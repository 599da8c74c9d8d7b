import { join } from "node:path";
import { type FoundModel, findModel, type Places } from "../../nlp/hear/find-model.ts";
import { createHearing, type Hearing } from "../../nlp/hear/hearing.ts";

/** The recogniser, once there are weights for it. */
export type Ear = {
  /** Looks for weights, unless they were found already. */
  readonly look: () => Promise<void>;
  /** The weights in use. */
  readonly model: () => FoundModel | undefined;
  readonly hearing: () => Hearing | undefined;
  readonly close: () => void;
};

export const modelPlaces = (home: string, given: string | null, sample: boolean): Places => ({
  given,
  fetched: join(home, "models"),
  sample,
});

export const createEar = (places: Places, language: string): Ear => {
  let model: FoundModel | undefined;
  let hearing: Hearing | undefined;
  return {
    look: async () => {
      if (hearing !== undefined) return;
      const found = await findModel(places);
      if (found.tag !== "model") return;
      model = found;
      hearing = createHearing({ modelDir: found.dir, language });
    },
    model: () => model,
    hearing: () => hearing,
    close: () => hearing?.close(),
  };
};
