import { createInterface } from "node:readline";
import { z } from "zod";
import { explain } from "../nlp/read/explain.ts";
import { read } from "../nlp/read/index.ts";

const lineSchema = z.object({
  id: z.string(),
  said: z.string(),
  zone: z.string(),
  hemisphere: z.enum(["north", "south"]),
  text: z.string(),
});
const explains = process.argv.includes("--explain");
const print = (line: string): void => void process.stdout.write(`${line}\n`);

const answer = (line: string): void => {
  const { id, text, ...moment } = lineSchema.parse(JSON.parse(line));
  const { records, usage } = read(text, moment);
  if (explains) for (const each of [`note ${id}`, ...explain(text, records), ""]) print(each);
  else
    print(
      JSON.stringify({
        id,
        records: records.map((draft) => draft.fields),
        usage: usage.map((draft) => draft.usage),
      }),
    );
};

const problem = (error: unknown): string => {
  if (error instanceof z.ZodError)
    return error.issues.map((issue) => `${issue.path.join(".")}: ${issue.message}`).join("; ");
  return error instanceof Error ? error.message : String(error);
};

let number = 0;
for await (const line of createInterface({ input: process.stdin })) {
  number += 1;
  if (line.trim() === "") continue;
  try {
    answer(line);
  } catch (error) {
    print(JSON.stringify({ error: `Line ${String(number)}: ${problem(error)}` }));
  }
}
