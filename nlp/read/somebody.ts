import people from "../lexicon/data/people.json" with { type: "json" };

/** Last words of who may have done the work: "the fella", "my son in law". */
export const WHO: ReadonlySet<string> = new Set(people.who.flatMap((who) => who.split(" ").slice(-1)));
