import { Temporal } from "temporal-polyfill";
import { z } from "zod";
import { isZone } from "../rig/rig.ts";

const instant = z.string().transform((text, context) => {
  try {
    return Temporal.Instant.from(text);
  } catch {
    context.addIssue({ code: "custom", message: `"${text}" is not a time with an offset.` });
    return z.NEVER;
  }
});

export const headSchema = z.object({
  zone: z.string().refine(isZone, { error: "The zone is not an IANA time zone." }),
  hemisphere: z.enum(["north", "south"]).optional(),
  name: z.string().optional(),
});

export const turnSchema = z.union(
  [
    z.object({ at: instant, text: z.string() }),
    z.object({ at: instant, voice: z.string() }),
    z.object({ at: instant, tap: z.string() }),
  ],
  { error: "A turn needs `at` and one of `text`, `voice` and `tap`." },
);
export type ReplayTurn = z.infer<typeof turnSchema>;
