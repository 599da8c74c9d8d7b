import pino, { type DestinationStream, type Logger } from "pino";

/** Takes secrets out of whatever text might reach a log. */
export const redactor =
  (secrets: readonly string[]) =>
  (text: string): string =>
    secrets.reduce((clean, secret) => clean.replaceAll(secret, "[token]"), text);

const cleaned = (value: unknown, redact: (text: string) => string): unknown => {
  if (typeof value === "string") return redact(value);
  if (value instanceof Error) return { name: value.name, message: redact(value.message) };
  if (typeof value !== "object" || value === null) return value;
  return Object.fromEntries(Object.entries(value).map(([key, each]) => [key, cleaned(each, redact)]));
};

/** A log of ids and kinds on standard error: never what people said, never a token. */
export const createLog = (
  level: string,
  secrets: readonly string[],
  destination: DestinationStream = pino.destination({ dest: 2, sync: true }),
): Logger => {
  const redact = redactor(secrets);
  return pino(
    {
      level,
      base: null,
      formatters: { log: (fields) => cleaned(fields, redact) as Record<string, unknown> },
      hooks: {
        logMethod(input, method) {
          method.apply(
            this,
            input.map((each) => (typeof each === "string" ? redact(each) : each)) as typeof input,
          );
        },
      },
    },
    destination,
  );
};
