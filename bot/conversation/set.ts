import type { Setting } from "../../shared/memory/intent.ts";
import { hemisphereOf, isZone, type Rig, settingKey } from "../rig/rig.ts";
import type { Turn } from "./turn.ts";

const put = <K extends keyof Rig>(turn: Turn, key: K, value: Rig[K]): void =>
  turn.keeper.setSetting(settingKey(key), JSON.stringify(value));

const clock = (hour: number): string => `${hour}:00`;

const apply = (turn: Turn, setting: Setting): string => {
  switch (setting.set) {
    case "rig-name":
      put(turn, "name", setting.to.slice(0, 60));
      return `The rig is called ${setting.to.slice(0, 60)} now.`;
    case "zone":
      if (!isZone(setting.to))
        return `I don't know the time zone “${setting.to}”. Name a big city in it, or write it like America/Denver.`;
      put(turn, "zone", setting.to);
      put(turn, "hemisphere", hemisphereOf(setting.to));
      return `I go by ${setting.to.replaceAll("_", " ")} time now.`;
    case "hemisphere":
      put(turn, "hemisphere", setting.to);
      return `Seasons are those of the ${setting.to}ern half of the world now.`;
    case "units":
      put(turn, "units", setting.to);
      return `I count in ${setting.to} now.`;
    case "quiet-hours":
      put(turn, "quietFrom", setting.from);
      put(turn, "quietTo", setting.to);
      return `I keep quiet from ${clock(setting.from)} to ${clock(setting.to)}.`;
    case "language":
      return "I read English only so far. A voice note in another language would not come out right.";
  }
};

export const set = (turn: Turn, setting: Setting): void => {
  const text = apply(turn, setting);
  const changed = turn.keeper.changes().length > 0;
  turn.say({
    text,
    ...(changed ? { buttons: [[{ label: "Undo", tap: { tap: "undo" as const, turn: turn.turnId } }]] } : {}),
  });
};
