import { join } from "node:path";
import envPaths from "env-paths";
import { z } from "zod";

const environmentSchema = z.object({
  HOLDFAST_HOME: z.string().min(1).optional(),
  HOLDFAST_TOKEN: z
    .string()
    .regex(
      /^\d+:[\w-]{20,}$/,
      "HOLDFAST_TOKEN should look like 123456789:letters-and-digits, as the messenger gave it.",
    )
    .optional(),
  HOLDFAST_API_ROOT: z.url().optional(),
  HOLDFAST_PORT: z.coerce.number().int().min(0).max(65535).default(8470),
  HOLDFAST_HOST: z.string().default("127.0.0.1"),
  HOLDFAST_MODEL: z.string().min(1).optional(),
  HOLDFAST_LANGUAGE: z
    .string()
    .regex(/^[a-z]{2}$/, "HOLDFAST_LANGUAGE should be two letters, like en or fr.")
    .default("en"),
  HOLDFAST_LOG: z.enum(["silent", "error", "warn", "info", "debug"]).default("warn"),
});

export type Messenger = { readonly token: string; readonly apiRoot: string };

export type Config = {
  /** The folder that holds the database, sounds and photos. */
  readonly home: string;
  readonly page: { readonly host: string; readonly port: number };
  readonly messenger: Messenger | null;
  /** A folder of speech weights, when one was named. */
  readonly model: string | null;
  /** ISO 639-1; only multilingual speech weights look at it. */
  readonly language: string;
  readonly logLevel: "silent" | "error" | "warn" | "info" | "debug";
};

export type ConfigResult =
  | { readonly ok: true; readonly config: Config }
  | { readonly ok: false; readonly problem: string };

const PUBLIC_API_ROOT = "https://api.telegram.org";

/** Reads the environment once. A wrong value comes back as a sentence that says what to do; it never echoes the token. */
export const configFrom = (environment: Readonly<Record<string, string | undefined>>): ConfigResult => {
  const parsed = environmentSchema.safeParse(environment);
  if (!parsed.success) {
    const issue = parsed.error.issues[0];
    const name = issue?.path.join(".") ?? "The environment";
    return {
      ok: false,
      problem:
        issue?.message.startsWith("HOLDFAST_") === true
          ? issue.message
          : `${name} is not usable: ${issue?.message ?? "check it"}.`,
    };
  }
  const env = parsed.data;
  return {
    ok: true,
    config: {
      home: env.HOLDFAST_HOME ?? envPaths("holdfast", { suffix: "" }).data,
      page: { host: env.HOLDFAST_HOST, port: env.HOLDFAST_PORT },
      messenger:
        env.HOLDFAST_TOKEN === undefined
          ? null
          : { token: env.HOLDFAST_TOKEN, apiRoot: env.HOLDFAST_API_ROOT ?? PUBLIC_API_ROOT },
      model: env.HOLDFAST_MODEL ?? null,
      language: env.HOLDFAST_LANGUAGE,
      logLevel: env.HOLDFAST_LOG,
    },
  };
};

export const mediaFolder = (home: string): string => join(home, "media");
