import { Temporal } from "temporal-polyfill";
import { describe, expect, it } from "vitest";
import { sendNudges } from "../../bot/nudges/send-nudges.ts";
import { usualDegrees } from "../../bot/rig/degrees.ts";
import { createDesk } from "../help/desk.ts";
import { CHAT, NOW } from "../help/store.ts";

const dueOn = ({ store }: ReturnType<typeof createDesk>): string => store.looks.of(1)?.due ?? "";
const readyAt = ({ store }: ReturnType<typeof createDesk>) =>
  Temporal.Instant.from(store.readiness.of(1) ?? "");

describe("what was glued or sealed today", () => {
  it("keeps a tank dry until it may get wet, and is looked at only after that", () => {
    const desk = createDesk();
    const [said] = desk.say("patched the gray tank with epoxy and glass cloth, it's 50°F out");
    expect(said).toMatch(
      /28 hours before you touch it, 5 days before it carries anything and 2 weeks before/,
    );
    const ready = readyAt(desk);
    expect(NOW.until(ready).total("hours")).toBeGreaterThan(24 * 12);
    expect(dueOn(desk) > ready.toString({ timeZone: "America/Denver" }).slice(0, 10)).toBe(true);
    sendNudges(desk.store, ready.add({ hours: 24 }));
    expect(desk.store.outbox.hasSaid(CHAT, "get wet by now", NOW.toString())).toBe(true);
  });

  it("is through when it carries, where water does not matter", () => {
    const wet = createDesk();
    wet.say("patched the gray tank with epoxy, it's 20°C");
    const dry = createDesk();
    dry.say("glued the cabinet hinge back with epoxy, it's 20°C");
    expect(Temporal.Instant.compare(readyAt(dry), readyAt(wet))).toBe(-1);
  });

  it("asks how warm it is, and takes the answer in the degrees of the place", () => {
    const desk = createDesk();
    expect(desk.say("sealed the window with silicone, 3 tubes")[0]).toContain("how warm");
    expect(desk.say("50")[0]).toContain("before it gets wet");
  });

  it("takes no price that is put right for the answer", () => {
    const desk = createDesk();
    desk.say("sealed the window with silicone, 12 dollars");
    expect(desk.say("no it was nine")[0]).toContain("$12 → $9");
  });

  it("means Fahrenheit in the United States and Celsius elsewhere, whatever the miles", () => {
    expect(usualDegrees({ zone: "America/Denver" })).toBe("fahrenheit");
    for (const zone of ["America/Toronto", "Europe/London", "Australia/Hobart", "America/Argentina/Ushuaia"])
      expect(usualDegrees({ zone })).toBe("celsius");
  });
});
