import { careOffer } from "../replies/care.ts";
import type { Turn } from "./turn.ts";

const zoneName = (zone: string): string => (zone.split("/").at(-1) ?? zone).replaceAll("_", " ");

const hours = (hour: number): string => `${hour}:00`;

export const greet = (turn: Turn): void => {
  const { rig } = turn;
  const care = careOffer();
  turn.say({
    text: [
      `Hello ${turn.person.name}. I keep the log for ${rig.name}.`,
      "Tell me what you fixed, in your own words, typed or as a voice note. I write it down, and I say when it is due for a look.",
      `I take it that you go by ${zoneName(rig.zone)} time, count in ${rig.units}, and want quiet from ${hours(rig.quietFrom)} to ${hours(rig.quietTo)}. Just say so if not, or tell me the rig's name: “call her Magpie”.`,
      care.text,
    ].join("\n\n"),
    ...(care.buttons === undefined ? {} : { buttons: care.buttons }),
  });
};

export const help = (turn: Turn): void => {
  turn.say({
    text: [
      "Tell me: “resealed the front roof seam this morning, two tubes, 31 dollars”.",
      "Correct me: “no, the gray tank”, “that was last Tuesday”, “scratch that”.",
      "Ask me: “what did I last do to the gray tank?”, “what's open?”, “what have I spent since spring?”",
      "Log use: “towed 212 miles”, “three nights”.",
      "Before a trip: “we leave on the 12th for four months”. When you are back: “we're home”.",
      "Set: “call her Magpie”, “we're in Denver time”, “use km”, “quiet from 10 pm to 7 am”.",
      "A second person: say “pair another phone”.",
    ].join("\n"),
  });
};
