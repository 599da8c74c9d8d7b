import { createInterface } from "node:readline";
import type { Readable, Writable } from "node:stream";
import { ZodError } from "zod";

export type Line = { readonly number: number; readonly text: string };

/** The lines of a stream that hold something, with their numbers from 1. */
export async function* linesOf(input: Readable): AsyncGenerator<Line> {
  let number = 0;
  for await (const text of createInterface({ input, crlfDelay: Number.POSITIVE_INFINITY })) {
    number++;
    if (text.trim() !== "") yield { number, text };
  }
}

/** Writes one JSON line, waiting when the reader is slower. */
export const writeLine = async (output: Writable, value: unknown): Promise<void> => {
  if (!output.write(`${JSON.stringify(value)}\n`))
    await new Promise((resolve) => output.once("drain", resolve));
};

const reason = (error: unknown): string => {
  if (error instanceof SyntaxError) return "This line is not JSON.";
  if (error instanceof ZodError) return error.issues[0]?.message ?? "This line can't be used.";
  return error instanceof Error ? error.message : "This line can't be used.";
};

/** What is wrong with a line, in a sentence. */
export const lineError = (line: Line, error: unknown): { readonly error: string; readonly line: number } => ({
  error: reason(error),
  line: line.number,
});
