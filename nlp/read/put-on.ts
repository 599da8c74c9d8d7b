import type { UseUnit } from "../../shared/record.ts";
import type { Amount } from "./amount.ts";
import type { Scan } from "./scan.ts";
import { touching } from "./windows.ts";
import { listed } from "./words.ts";

const PUT = new Set(["put", "added", "racked", "clocked"]);
const RIG = listed("putOnRig");
const LEAST = 50;
/** Zones in which distances are told in miles. */
const MILES =
  /^(?:US\/|Europe\/London|America\/(?!Toronto|Vancouver|Edmonton|Winnipeg|Halifax|Regina|Moncton|St_Johns|Montreal|Whitehorse|Mexico|Sao|Argentina|Bogota|Lima|Santiago))/;

/** What a distance without a unit is told in where the speaker is; the note's own unit first. */
export const unitHere = (scan: Scan): UseUnit =>
  scan.amounts.find(({ what }) => what === "miles" || what === "km")?.what === "km" ||
  !MILES.test(scan.moment.zone)
    ? "km"
    : "miles";

/** "We put 1,600 on her this summer": a distance told without its unit. */
export const putOn = (scan: Scan): (Amount & { readonly what: UseUnit })[] =>
  scan.numbers.flatMap((number) => {
    const word = (at: number): string => scan.tokens[at]?.norm ?? "";
    const verb = [1, 2, 3].some((back) => PUT.has(word(number.from - back)));
    const rig = word(number.to) === "on" && (RIG.has(word(number.to + 1)) || RIG.has(word(number.to + 2)));
    const known = touching(scan.amounts, number.from, number.to).some(
      (amount) => amount.from <= number.from && number.from < amount.to,
    );
    return verb && rig && !known && number.value >= LEAST
      ? [{ from: number.from, to: number.to, value: number.value, what: unitHere(scan) }]
      : [];
  });
