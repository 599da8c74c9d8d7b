import { describe, expect, it } from "vitest";
import { type Heard, onRecord, type Rate } from "../../../nlp/ask/on-record.ts";
import { EMPTY_TOPIC, type Query } from "../../../shared/memory/query.ts";
import type { RecordFields } from "../../../shared/record.ts";

const FIELDS: RecordFields = {
  kind: "repair",
  component: "awning",
  where: null,
  action: "patch",
  materials: [],
  date: "2025-04-01",
  outcome: "untested",
  exposure: [],
  cost: null,
  fault: null,
  due: null,
};
const HEARD: Heard = {
  known: [{ id: 1, fields: FIELDS }],
  before: undefined,
  spoken: new Map([["awning", 0.3]]),
  carried: false,
};
const TOPIC = { ...EMPTY_TOPIC, named: [{ component: "blind", sure: 1 }] } as const;
/** The judge takes the thing named for the one meant, and holds the other for possible. */
const rate: Rate = (_, candidates) => candidates.map(({ component }) => (component === "blind" ? 0.9 : 0.1));
const named = (query: Query) => {
  const found = onRecord(query, HEARD, rate);
  return "topic" in found ? found.topic.named.map(({ component }) => component) : [];
};

describe("a question that takes work for known", () => {
  it("may be about what there is work on, where there is none on the thing named", () => {
    expect(named({ ask: "longest", topic: TOPIC, order: "longest" })).toEqual(["blind", "awning"]);
  });

  it("is not about what nothing in it points at", () => {
    const heard = { ...HEARD, spoken: new Map(), carried: false };
    const found = onRecord({ ask: "longest", topic: TOPIC, order: "longest" }, heard, rate);
    expect("topic" in found && found.topic.named).toHaveLength(1);
  });
});

describe("a question whether there was work", () => {
  it("is about the thing named alone", () => {
    expect(named({ ask: "ever", topic: TOPIC, period: null })).toEqual(["blind"]);
  });
});

describe("a question that names nothing itself", () => {
  it("stays with what was asked about before", () => {
    const surelyOther: Rate = (_, candidates) =>
      candidates.map(({ component }) => Number(component === "awning"));
    const query: Query = { ask: "longest", topic: TOPIC, order: "longest" };
    expect(onRecord(query, { ...HEARD, carried: true }, surelyOther)).toEqual(query);
    expect(onRecord(query, HEARD, surelyOther)).not.toEqual(query);
  });
});
