import irregular from "./data/irregular-verbs.json" with { type: "json" };

export type VerbForm = "base" | "third" | "gerund" | "past" | "participle";
export type Inflected = { readonly form: VerbForm; readonly text: string };

const irregularByBase = new Map(
  irregular.verbs.map(([base = "", past = "", participle = ""]) => [base, { past, participle }]),
);
const DOUBLING =
  /^(?:swap|shim|drip|stop|plug|wrap|strip|trim|rig|dab|tap|flap|clip|snap|snug|rub|slap|pop|jam|zip|rip|lag|drag|nip|mop|pump up|top|cap|pin|bed|rebed|fit|rot|cut|put|run|hit|set|quit|split|sit|chip|sag|bag|tip|tug|dig|skip|drop|flip|trip|slip|ship|plan|scrub|bin|jig|reset|refit|rig|shut|get|let|crop|whip|mat|lap|bleb|tin|pot|unplug|replug|fob|nod|beg|dip|spin|begin|win|grip|step|bob|lob|chop|prop|swab|stem|bug|ban|scrap|gut|jot|rev|stun|net|retap|outfit|inset|pad|bar|star|stir|tar|scab|lop|hem|cap|quip|drum|nag|gob|daub|retrim|regrip|club)$/;

const stemOf = (base: string): string => {
  if (base.endsWith("ee") || base.endsWith("oe") || base.endsWith("ye")) return base;
  return base.endsWith("e") ? base.slice(0, -1) : DOUBLING.test(base) ? base + (base.at(-1) ?? "") : base;
};

const regularPast = (base: string): string => {
  if (base.endsWith("e")) return `${base}d`;
  if (/[^aeiou]y$/.test(base)) return `${base.slice(0, -1)}ied`;
  return `${stemOf(base)}ed`;
};

const third = (base: string): string => {
  if (/(?:s|x|z|ch|sh|o)$/.test(base)) return `${base}es`;
  return /[^aeiou]y$/.test(base) ? `${base.slice(0, -1)}ies` : `${base}s`;
};

const gerund = (base: string): string =>
  base.endsWith("ie") ? `${base.slice(0, -2)}ying` : `${stemOf(base)}ing`;

const forms = (form: VerbForm, texts: string): Inflected[] =>
  texts.split("|").map((text) => ({ form, text }));

/** Every form of a verb given by its base form: "swap" gives swap, swaps, swapping, swapped. */
export const inflect = (base: string): readonly Inflected[] => {
  const odd = irregularByBase.get(base) ?? { past: regularPast(base), participle: regularPast(base) };
  return [
    ...forms("base", base),
    ...forms("third", third(base)),
    ...forms("gerund", gerund(base)),
    ...forms("past", odd.past),
    ...forms("participle", odd.participle),
  ];
};
