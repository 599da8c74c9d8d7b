import fc from "fast-check";
import { Temporal } from "temporal-polyfill";
import { describe, expect, it } from "vitest";
import { isCivil, nudgeTime } from "../../bot/nudges/civil-hours.ts";
import { nextNudgeTime } from "../../bot/nudges/next-nudge-time.ts";
import { sendNudges } from "../../bot/nudges/send-nudges.ts";
import { type Rig, rigOf } from "../../bot/rig/rig.ts";
import { COMPONENTS, componentName } from "../../shared/vocabulary.ts";
import { createDesk } from "../help/desk.ts";
import { CHAT, NOW } from "../help/store.ts";

const nudgesIn = ({ store }: ReturnType<typeof createDesk>) =>
  store.db
    .prepare("SELECT count(*) FROM outbox WHERE shows ->> '$.of' = 'nudge' AND method = 'sendMessage'")
    .pluck()
    .get();

/** A rig with many fixes, all told today. */
const busyDesk = (fixes = 12) => {
  const desk = createDesk();
  for (const component of COMPONENTS.slice(0, fixes))
    desk.say(`replaced the ${componentName(component)} today`);
  return desk;
};

describe("nudges", () => {
  it("after a month asleep come as one message, the worst first, and the rest on the days after", () => {
    const desk = busyDesk();
    const woken = NOW.add({ hours: 24 * 120 });
    const first = sendNudges(desk.store, woken.add({ hours: 1 }));
    expect(nudgesIn(desk)).toBe(1);
    expect(first.records).toHaveLength(4);
    expect(sendNudges(desk.store, woken.add({ hours: 2 })).sent).toBe(false);
    const next = sendNudges(desk.store, woken.add({ hours: 25 }));
    expect(next.records.length).toBeGreaterThan(0);
    expect(next.records.filter((id) => first.records.includes(id))).toEqual([]);
  });

  it("go to every paired person once", () => {
    const desk = busyDesk(1);
    desk.store.people.pair({ channel: "page", chatId: 8 }, "Tomas", NOW.toString());
    sendNudges(desk.store, NOW.add({ hours: 24 * 120 + 1 }));
    expect(nudgesIn(desk)).toBe(2);
  });

  it("are not repeated when the clock is set back or the program is started again", () => {
    const desk = busyDesk(1);
    const later = NOW.add({ hours: 24 * 120 + 1 });
    expect(sendNudges(desk.store, later).sent).toBe(true);
    for (const hours of [-48, -1, 0, 1, 48, 24 * 30]) {
      expect(sendNudges(desk.store, later.add({ hours })).sent).toBe(false);
    }
  });

  it("that nobody answers are not said twice, and a spoken answer still counts days later", () => {
    const desk = busyDesk(1);
    const later = NOW.add({ hours: 24 * 120 + 1 });
    sendNudges(desk.store, later);
    desk.clock.set(later.add({ hours: 24 * 3 }));
    desk.say("still good");
    expect(desk.store.history.record(1)?.verdicts.map(({ outcome }) => outcome)).toEqual(["holding"]);
  });

  it("are about fixes that stand: not about one that was taken away or taken over from", () => {
    const desk = busyDesk(2);
    desk.say("scratch that");
    const { records } = sendNudges(desk.store, NOW.add({ hours: 24 * 200 + 1 }));
    expect(records).toEqual([1]);
  });
});

describe("the hour of a nudge", () => {
  const zones = fc.constantFrom(
    "America/Denver",
    "America/St_Johns",
    "Europe/London",
    "Australia/Lord_Howe",
    "Asia/Kolkata",
  );
  const instants = fc
    .integer({ min: Date.parse("2024-01-01"), max: Date.parse("2028-01-01") })
    .map((ms) => Temporal.Instant.fromEpochMilliseconds(ms));
  const hour = fc.integer({ min: 0, max: 23 });
  const quietRig = (zone: string, quietFrom: number, quietTo: number): Rig => ({
    name: "Magpie",
    zone,
    hemisphere: "north",
    units: "miles",
    quietFrom,
    quietTo,
  });

  it("is never a quiet one, in any zone, on any day, clock changes included", () => {
    fc.assert(
      fc.property(zones, instants, hour, hour, (zone, now, quietFrom, quietTo) => {
        const rig = quietRig(zone, quietFrom, quietTo);
        const local = now.toZonedDateTimeISO(zone).hour;
        const quiet =
          quietFrom < quietTo ? local >= quietFrom && local < quietTo : local >= quietFrom || local < quietTo;
        fc.pre(quietFrom !== quietTo);
        if (quiet) expect(isCivil(now, rig)).toBe(false);
      }),
    );
  });

  it("comes on every day", () => {
    fc.assert(
      fc.property(zones, instants, hour, hour, (zone, now, quietFrom, quietTo) => {
        const rig = quietRig(zone, quietFrom, quietTo);
        const day = now.toZonedDateTimeISO(zone).toPlainDate();
        const hours = Array.from({ length: 25 }, (_, index) =>
          nudgeTime(day, rig).add({ hours: index - 12 }),
        );
        expect(hours.some((moment) => isCivil(moment, rig))).toBe(true);
      }),
    );
  });

  it("is foretold: what the next time says is when it is sent", () => {
    const desk = busyDesk(3);
    const rig = rigOf(desk.store);
    const next = nextNudgeTime(desk.store, NOW);
    expect(next).toBeDefined();
    if (next === undefined) return;
    expect(isCivil(next, rig)).toBe(true);
    expect(sendNudges(desk.store, next.subtract({ minutes: 1 })).sent).toBe(false);
    expect(sendNudges(desk.store, next).sent).toBe(true);
  });
});

describe("a nudge about many", () => {
  it("takes one tap for all of them", () => {
    const desk = busyDesk();
    const later = NOW.add({ hours: 24 * 120 + 1 });
    const { records } = sendNudges(desk.store, later);
    desk.clock.set(later);
    const message = Number(desk.store.outbox.lastShown(CHAT.channel, CHAT.chatId)?.id) + 10_000;
    desk.receive({});
    const [text] = desk.tap("looks/holding", message);
    expect(text).toMatch(/still good/);
    expect(records.map((id) => desk.store.history.record(id)?.fields.outcome)).toEqual(
      records.map(() => "holding"),
    );
  });
});
