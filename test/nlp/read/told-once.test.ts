import { describe, expect, it } from "vitest";
import { toldOnce } from "../../../nlp/read/told-once.ts";
import type { Draft } from "../../../shared/reading.ts";
import { draft } from "../../shared/memory/rig.ts";

const tire = (more: Partial<Draft["fields"]> = {}): Draft =>
  draft({ component: "tire", action: "replace", date: "2025-05-01", ...more }, 10);

describe("what a note tells twice", () => {
  it("is one record where the second telling adds nothing", () => {
    expect(toldOnce([tire({ cost: 122 }), tire()])).toHaveLength(1);
  });
  it.each([{ where: "left" }, { cost: 80 }, { date: "2025-06-01" }, { materials: ["valve"] }])(
    "is two where it adds something: %j",
    (more) => {
      expect(toldOnce([tire(), tire(more)])).toHaveLength(2);
    },
  );
});
