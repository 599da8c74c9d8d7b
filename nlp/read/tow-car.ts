import type { Scan, Stretch } from "./scan.ts";
import { startingIn } from "./windows.ts";
import { listed } from "./words.ts";

const TOW_CARS = listed("theirRigTowCars");
/** "The truck camper" is the rig. */
const RIGS = listed("theirRigRigs");
const THE = new Set(["the", "my", "our", "his", "her"]);
const OF = new Set(["in", "on", "of"]);
/** As far behind the thing, in words, as its trouble is looked for. */
const NEAR = 9;

/** "The aircon in the ute carked it": trouble of a thing of what tows. */
export const ofTowCar = ({ tokens, components, faults }: Scan): Stretch[] => {
  const word = (at: number): string => tokens[at]?.norm ?? "";
  return components.flatMap(({ from, to }) => {
    const isCars =
      OF.has(word(to)) && THE.has(word(to + 1)) && TOW_CARS.has(word(to + 2)) && !RIGS.has(word(to + 3));
    const fault = isCars ? startingIn(faults, to, to + NEAR)[0] : undefined;
    return fault === undefined ? [] : [{ from, to: fault.to }];
  });
};
