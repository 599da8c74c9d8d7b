import { readdirSync, readFileSync } from "node:fs";
import { fileURLToPath } from "node:url";
import { z } from "zod";
import { SPELLER } from "../../../../nlp/lexicon/lexicon.ts";
import { tokenize } from "../../../../nlp/lexicon/spelling.ts";
import { describingSigns } from "../../../../nlp/read/described.ts";
import { COMPONENTS } from "../../../../shared/vocabulary.ts";
import type { Example } from "./linear.ts";

const GOLD = fileURLToPath(new URL("../../../gold/", import.meta.url));

const nameSchema = z.object({ text: z.string(), component: z.enum(COMPONENTS) });
export type OwnName = z.infer<typeof nameSchema>;

/** What owners call things when they don't use the ordinary name. */
export const ownNames = (): OwnName[] =>
  readdirSync(GOLD)
    .filter((name) => /^names-\d+\.jsonl$/.test(name))
    .toSorted()
    .flatMap((name) => readFileSync(`${GOLD}${name}`, "utf8").split("\n"))
    .filter((line) => line !== "")
    .map((line) => nameSchema.parse(JSON.parse(line)));

/** What such names teach of the words around a place: the place is in their midst. */
export const nameLessons = (): Example[] =>
  ownNames().map(({ text, component }) => {
    const tokens = tokenize(text, SPELLER);
    return { signs: describingSigns(tokens, Math.floor(tokens.length / 2)), right: component };
  });
