import { createInterface } from "node:readline";
import { z } from "zod";
import { read } from "../nlp/read/index.ts";

const lineSchema = z.object({
  id: z.string(),
  said: z.string(),
  zone: z.string(),
  hemisphere: z.enum(["north", "south"]),
  text: z.string(),
});

const print = (value: unknown): void => void process.stdout.write(`${JSON.stringify(value)}\n`);

const answer = (line: string): unknown => {
  const { id, text, ...moment } = lineSchema.parse(JSON.parse(line));
  const { records, usage } = read(text, moment);
  return { id, records: records.map((draft) => draft.fields), usage: usage.map((draft) => draft.usage) };
};

let number = 0;
for await (const line of createInterface({ input: process.stdin })) {
  number += 1;
  if (line.trim() === "") continue;
  try {
    print(answer(line));
  } catch (error) {
    print({ error: `Line ${String(number)}: ${error instanceof Error ? error.message : String(error)}` });
  }
}
