import { describe, expect, it } from "vitest";
import { createDesk } from "../help/desk.ts";
import { NOW } from "../help/store.ts";

const WEEKS = 24 * 7;

/** Three seals against rain, and a word that may be on any of them. */
const soaked = () => {
  const desk = createDesk();
  desk.say("sealed round the bathroom roof vent with lap sealant");
  desk.say("put butyl tape behind the front corner trim");
  desk.say("rebedded the bedroom window with butyl tape");
  desk.clock.set(NOW.add({ hours: 7 * WEEKS }));
  return { desk, asked: desk.say("woke up to drips on the pillow again")[0] };
};

describe("a word on one of several works", () => {
  it("is asked about once, and tells nothing of a thing that it does not name", () => {
    const { desk, asked } = soaked();
    expect(asked).toBe("Kept your words. Which of these are they about?");
    expect(desk.store.history.records({ kinds: ["check", "fault"] })).toEqual([]);
  });

  it("is put with the one that is named", () => {
    const { desk } = soaked();
    expect(desk.say("the bedroom one")[0]).toMatch(/^Added to that one\. Window, bedroom.*Did not hold/);
    expect(desk.say("is the bedroom window holding")[0]).toMatch(/^No\./);
  });

  it("is put with the one that is tapped, and comes off again", () => {
    const { desk } = soaked();
    const [vent] = desk.store.history.records({ components: ["roof-vent"] });
    expect(desk.tap(`pick/${String(vent?.id)}`).join()).toMatch(/Added to that one\. Roof vent/);
    expect(desk.store.history.record(vent?.id ?? 0)?.fields.outcome).toBe("failed");
    desk.say("undo");
    expect(desk.store.history.record(vent?.id ?? 0)?.fields.outcome).toBe("untested");
  });

  it("stays as words where it is none of them", () => {
    const { desk } = soaked();
    expect(desk.tap("none").join()).toContain("All right, they stay as your words.");
    expect(desk.tap("none").join()).not.toContain("stay as your words");
    expect(desk.store.history.records({ outcomes: ["failed"] })).toEqual([]);
  });

  it("is not answered by a question about one of them", () => {
    const { desk } = soaked();
    expect(desk.say("so that corner trim holding or not")[0]).toMatch(/^Yes, as far as you have told me/);
    expect(desk.store.history.records({ outcomes: ["failed"] })).toEqual([]);
  });

  it("is not asked about where a known thing is named", () => {
    const { desk } = soaked();
    expect(desk.say("the bedroom window let in again")[0]).not.toContain("Which of these");
  });
});
