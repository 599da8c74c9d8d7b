import { describe, expect, it } from "vitest";
import {
  compromiseAlone,
  figuresOf,
  HAS_MAINTIE,
  HAS_WORK_ORDERS,
  maintieSentences,
  ours,
  workOrderSentences,
} from "./maintenance.ts";

describe.skipIf(!HAS_MAINTIE)("MaintIE texts (left out where ../shared/checks/maintie is absent)", () => {
  it("find activities and trouble better than compromise alone", () => {
    const sentences = maintieSentences().slice(0, 300);
    for (const sort of ["activity", "trouble"] as const)
      expect(figuresOf(sentences, sort, ours).touching).toBeGreaterThan(
        figuresOf(sentences, sort, compromiseAlone).touching + 0.15,
      );
    expect(figuresOf(sentences, "activity", ours).touching).toBeGreaterThan(0.65);
    expect(figuresOf(sentences, "trouble", ours).touching).toBeGreaterThan(0.7);
  });
});

describe.skipIf(!HAS_WORK_ORDERS)("work orders (left out where ../shared/checks/mwo2kg is absent)", () => {
  it("find activities and trouble in rough spelling", () => {
    const sentences = workOrderSentences();
    expect(figuresOf(sentences, "activity", ours).touching).toBeGreaterThan(0.65);
    expect(figuresOf(sentences, "trouble", ours).touching).toBeGreaterThan(0.7);
  });
});
