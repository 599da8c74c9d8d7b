import { afterEach, describe, expect, it } from "vitest";
import { labelsOf, startTalk, type Talk, textOf } from "../help/talk.ts";

let talk: Talk;
afterEach(() => talk.stop());

describe("telling", () => {
  it("comes back as short numbered records, and can be undone and brought back", async () => {
    talk = await startTalk();
    const reply = await talk.say(
      "resealed the front roof seam this morning with self leveling sealant, 31 dollars. also greased the wheel bearings yesterday",
    );
    expect(textOf(reply)).toMatch(/^1\. Roof seam.*sealed.*today.*\$31/);
    expect(textOf(reply)).toMatch(/\n2\. Wheel bearing.*greased.*yesterday/);
    expect(labelsOf(reply)).toContain("Undo");
    await talk.tap("Undo");
    expect(talk.program.store.history.records({})).toEqual([]);
    await talk.tap("Undo that");
    expect(talk.program.store.history.records({})).toHaveLength(2);
  });

  it("keeps the words of a message that holds no work", async () => {
    talk = await startTalk();
    const reply = await talk.say("gosh it is hot out, off to find some shade");
    expect(reply).toHaveLength(1);
    expect(talk.program.store.history.records({})).toEqual([]);
    expect(talk.program.store.history.notes("shade", 1)).toHaveLength(1);
  });

  it("follows a message that is edited", async () => {
    talk = await startTalk();
    const message = await talk.person.say("patched the black tank today with epoxy");
    await talk.quiet();
    await talk.person.edit(message.message_id, "patched the gray tank today with epoxy");
    await talk.quiet();
    const records = talk.program.store.history.records({});
    expect(records.map(({ fields }) => fields.component)).toEqual(["gray-tank"]);
  });
});

describe("asking", () => {
  it("answers what was last done, from the records", async () => {
    talk = await startTalk();
    await talk.say("patched the gray tank today with epoxy and glass cloth");
    const reply = await talk.say("what did I last do to the gray tank?");
    expect(textOf(reply)).toMatch(/Gray tank: patched with epoxy and glass cloth, today/);
  });

  it("says so when it knows nothing", async () => {
    talk = await startTalk();
    expect(textOf(await talk.say("what did I last do to the gray tank?"))).toMatch(
      /nothing on record about the gray tank/,
    );
  });
});

describe("asking for what there is no record of", () => {
  it("tells the closest as such", async () => {
    talk = await startTalk();
    await talk.say("my cousin greased the hitch ball today with marine grease");
    const reply = textOf(await talk.say("when did I last grease the tongue jack?"));
    expect(reply).toMatch(/^Nothing on record about the tongue jack itself\. What comes closest:/);
    expect(reply).toMatch(/greased with marine grease by your cousin, today/);
  });

  it("tells what let go apart from what is open", async () => {
    talk = await startTalk();
    await talk.say("patched the gray tank today with epoxy");
    await talk.say("need to buy a new sewer hose");
    await talk.say("the epoxy patch on the gray tank let go");
    const reply = textOf(await talk.say("what's open?"));
    expect(reply).toMatch(
      /^Open, 1 thing:\n1\. To do: replace the sewer hose.*\nAnd this let go:\n2\. Gray tank/,
    );
  });
});

describe("correcting", () => {
  it("changes the record that was shown last and says what changed", async () => {
    talk = await startTalk();
    await talk.say("patched the black tank today with epoxy");
    expect(textOf(await talk.say("no, the gray tank"))).toMatch(/Part: black tank → gray tank/);
    await talk.tap("Undo");
    expect(talk.program.store.history.records({})[0]?.fields.component).toBe("black-tank");
  });
});

describe("correcting two jobs at once", () => {
  it("says once what changed in both", async () => {
    talk = await startTalk();
    await talk.say("adjusted the left brake and greased the left hub");
    expect(textOf(await talk.say("right side sorry")).split("\n")[0]).toBe("Place: left → right side.");
  });

  it("says of each of several what changed, and undoes all of it at once", async () => {
    talk = await startTalk();
    await talk.say("craig put a new water pump in today, 119 bucks. also replaced the furnace igniter, 40");
    const reply = textOf(await talk.say("other way round sorry, the pump was 40 and the furnace was 119"));
    expect(reply).toMatch(/^Water pump, cost: \$119 → \$40\.\nFurnace, cost: \$40 → \$119\.\n\n/);
    await talk.say("undo");
    expect(talk.program.store.history.records({}).map(({ fields }) => fields.cost)).toEqual([40, 119]);
  });

  it("knows by name who did it", async () => {
    talk = await startTalk();
    await talk.say("craig put a new water pump in today");
    expect(textOf(await talk.say("who put the pump in?"))).toMatch(/^Craig did it\./);
    await talk.say("no, it was hank");
    expect(textOf(await talk.say("who put the pump in?"))).toMatch(/^Hank did it\./);
  });
});

describe("use of the rig", () => {
  it("is logged and put right", async () => {
    talk = await startTalk();
    expect(textOf(await talk.say("towed 212 miles today"))).toMatch(/^Logged: 212 miles, today/);
    await talk.say("no, 121");
    expect(talk.program.store.history.usage().map(({ usage }) => usage)).toMatchObject([
      { count: 121, unit: "miles" },
    ]);
  });
});

describe("miles and nights of one trip", () => {
  it("are logged in one line, with what they make of the year", async () => {
    talk = await startTalk();
    expect(textOf(await talk.say("towed 212 miles and three nights at the lake today"))).toBe(
      "Logged: 212 miles and 3 nights, today.",
    );
    expect(textOf(await talk.say("towed 100 miles home today"))).toBe(
      "Logged: 100 miles, today. That makes 312 miles this year.",
    );
  });
});

describe("nudges", () => {
  const dueNudge = async (): Promise<void> => {
    await talk.say("patched the gray tank today with epoxy and glass cloth");
    const due = talk.program.store.looks.soonest() ?? "";
    const morning = new Date(`${due}T10:00:00-06:00`).toISOString();
    const { Temporal } = await import("temporal-polyfill");
    talk.clock.moveTo(Temporal.Instant.from(morning));
    talk.program.nudge();
    await talk.quiet();
  };

  it("come once, say why and what to look for, and take a tap", async () => {
    talk = await startTalk();
    await dueNudge();
    talk.program.nudge();
    await talk.quiet();
    const nudges = (await talk.person.messages()).filter(({ text }) => text?.startsWith("Worth a look"));
    expect(nudges).toHaveLength(1);
    expect(labelsOf(nudges)).toEqual(["Still good", "Partly", "Came back", "Later"]);
    const before = talk.program.store.looks.of(1)?.due ?? "";
    const reply = await talk.tap("Still good");
    expect(textOf(reply)).toMatch(/Gray tank.*still good.*Next look/);
    expect(talk.program.store.looks.of(1)?.due.localeCompare(before)).toBe(1);
    expect(talk.program.store.history.record(1)?.fields.outcome).toBe("holding");
  });

  it("take a spoken answer", async () => {
    talk = await startTalk();
    await dueNudge();
    await talk.say("came back");
    expect(talk.program.store.history.record(1)?.fields.outcome).toBe("failed");
  });

  it("put off, count as no evidence and come again", async () => {
    talk = await startTalk();
    await dueNudge();
    await talk.tap("Later");
    expect(talk.program.store.history.record(1)?.verdicts).toEqual([]);
    talk.clock.moveTo(talk.clock.now().add({ hours: 24 * 8 }));
    expect(talk.program.nudge()).toBe(true);
  });
});

describe("strangers", () => {
  it("hear one neutral sentence and are not heard", async () => {
    talk = await startTalk({ paired: false });
    const reply = await talk.say("patched the gray tank today");
    expect(textOf(reply)).toMatch(/^This is a private log/);
    expect(talk.program.store.history.records({})).toEqual([]);
  });

  it("are let in by the code, which works once", async () => {
    talk = await startTalk();
    const code = (await talk.say("/pair")).map(textIn).join();
    expect(code).toMatch(/It works once/);
  });
});

const textIn = ({ text }: { text?: string }): string => text ?? "";
