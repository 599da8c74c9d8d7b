import { describe, expect, it } from "vitest";
import { type Known, spelledInContext } from "../../../nlp/understand/in-context.ts";

const MOMENT = { said: "2025-06-16T18:30:00-06:00", zone: "America/Denver", hemisphere: "north" } as const;
const STEP: Known = {
  component: "entry-step",
  words: "put a new bolt in the entry step",
  materials: ["bolt"],
  action: "replace",
};
const spelled = (text: string): string | null => spelledInContext(text, [STEP], MOMENT);

describe("a part told of after the thing that has it", () => {
  it("is named with its thing", () => {
    expect(spelled("the bolt has worked loose again")).toBe("the entry step bolt has worked loose again");
  });

  it("is not named twice over", () => {
    expect(spelled("the step bolt has worked loose again")).toBe(
      "the entry step bolt has worked loose again",
    );
  });

  it("is not that of a thing which hardly ever has one", () => {
    const heater: Known = {
      component: "water-heater",
      words: "put a new relief valve in the water heater",
      materials: ["relief valve"],
      action: "replace",
    };
    const text = "dust came in under the door so i stuck foam strip along the bottom of it";
    expect(spelledInContext(text, [heater], MOMENT)).toBeNull();
  });

  it("is no word out of the midst of a longer name", () => {
    const seal: Known = {
      component: "skylight",
      words: "sealed the skylight with lap sealant",
      materials: ["lap sealant"],
      action: "seal",
    };
    const text = "pulled all that off and bedded it in urethane sealant";
    expect(spelledInContext(text, [seal], MOMENT)).not.toContain("urethane skylight");
    expect(spelledInContext(text, [seal], MOMENT)).toContain("skylight urethane sealant");
  });
});
