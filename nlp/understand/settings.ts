import type { Setting } from "../../shared/memory/intent.ts";

const ZONES: readonly (readonly [RegExp, string])[] = [
  [/\beastern time\b/, "America/New_York"],
  [/\bcentral time\b/, "America/Chicago"],
  [/\bmountain time\b/, "America/Denver"],
  [/\barizona time\b/, "America/Phoenix"],
  [/\bpacific time\b/, "America/Los_Angeles"],
  [/\batlantic time\b/, "America/Halifax"],
  [/\balaska time\b/, "America/Anchorage"],
  [/\b(?:uk|british|london) time\b/, "Europe/London"],
  [/\b(?:irish|ireland) time\b/, "Europe/Dublin"],
  [/\b(?:central european|berlin|paris|german|french) time\b/, "Europe/Berlin"],
  [/\b(?:sydney|melbourne) time\b/, "Australia/Sydney"],
  [/\b(?:brisbane|queensland) time\b/, "Australia/Brisbane"],
  [/\b(?:perth|western australia\w*) time\b/, "Australia/Perth"],
  [/\b(?:new zealand|nz|auckland) time\b/, "Pacific/Auckland"],
];

const IANA = /\b((?:America|Europe|Australia|Pacific|Africa|Asia|Atlantic)\/[A-Za-z_]+(?:\/[A-Za-z_]+)?)\b/;

const zoneIn = (text: string, words: string): Setting | undefined => {
  const named = IANA.exec(text)?.[1];
  if (named !== undefined) return { set: "zone", to: named };
  const zone = ZONES.find(([pattern]) => pattern.test(words))?.[1];
  const meant = /\b(?:we are|were|im|i am|now|on|use|set|switch|change|in)\b/.test(words);
  return zone !== undefined && meant ? { set: "zone", to: zone } : undefined;
};

const NAME =
  /^(?:please )?(?:(?:we )?call (?:her|him|it|the rig|the trailer|the camper|the caravan|our rig|our trailer)|(?:her|its|his|the (?:rig|trailer|camper|caravan)s?) name is|the (?:rig|trailer|camper|caravan) is called|(?:she|its|it is|shes) called|name (?:her|it|the rig|the trailer)|rename (?:her|it|the rig|the trailer)(?: to)?) (\p{L}[\p{L} ]{0,30})$/u;

const titled = (name: string): string => name.replace(/(?:^|\s)\p{L}/gu, (letter) => letter.toUpperCase());

const nameIn = (words: string): Setting | undefined => {
  const name = NAME.exec(words)?.[1];
  return name === undefined ? undefined : { set: "rig-name", to: titled(name) };
};

const HOURS =
  /\b(?:quiet (?:hours|time)|(?:dont|do not|never|no) (?:\w+ ){0,3}?(?:nudge|nudges|bother|text|ping|message|messages|disturb|buzz|wake|write)\b.*?|leave me alone|quiet) (?:is |are |me )?(?:from |between |after )(\d{1,2})(?::00)? ?(am|pm)? ?(?:to|and|until|till|or before|before) (\d{1,2})(?::00)? ?(am|pm)?\b/;

const hour = (digits: string | undefined, half: string | undefined, evening: boolean): number => {
  const value = Number(digits) % 24;
  if (half === "pm" || (half === undefined && evening && value < 12)) return (value % 12) + 12;
  return half === "am" ? value % 12 : value;
};

const hoursIn = (words: string): Setting | undefined => {
  const match = HOURS.exec(words);
  if (match === null) return undefined;
  return { set: "quiet-hours", from: hour(match[1], match[2], true), to: hour(match[3], match[4], false) };
};

const LANGUAGES =
  /^(?:please )?(?:speak|switch to|use|set (?:the )?language to|language(?: is)?) (english|german|french|spanish|dutch|italian)(?: please)?$/;

/** A setting of the rig or the person, told in words. `words` is the text in lower case without marks. */
export const settingIn = (text: string, words: string): Setting | undefined => {
  if (words.split(" ").length > 14) return undefined;
  if (/^(?:\w+ ){0,4}?(?:in the )?(?:southern|northern) hemisphere(?: now)?$/.test(words)) {
    return { set: "hemisphere", to: words.includes("southern") ? "south" : "north" };
  }
  const units =
    /^(?:please )?(?:use|switch to|set (?:units|distance) to|change (?:units )?to|count in|measure in|show) (miles|km|kilomet(?:er|re)s|kms|metric|imperial)(?: please| from now on| instead)?$/.exec(
      words,
    )?.[1];
  if (units !== undefined) return { set: "units", to: /^(?:miles|imperial)$/.test(units) ? "miles" : "km" };
  const language = LANGUAGES.exec(words)?.[1];
  if (language !== undefined) return { set: "language", to: language };
  return hoursIn(words) ?? zoneIn(text, words) ?? nameIn(words);
};
