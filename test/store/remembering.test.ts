import { expect, it } from "vitest";
import { remembering } from "../../store/remembering.ts";

it("parses a row once while it stands, and anew when it was changed", () => {
  let parsed = 0;
  const parse = remembering((row) => {
    parsed++;
    return (row as { cost: number }).cost;
  });
  expect([parse({ id: 1, cost: 34 }), parse({ id: 1, cost: 34 }), parsed]).toEqual([34, 34, 1]);
  expect([parse({ id: 1, cost: 43 }), parse({ id: 2, cost: 34 }), parsed]).toEqual([43, 34, 3]);
});
