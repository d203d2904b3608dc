import { z } from "zod";

/** No station is longer than a day. */
const MAX_SECONDS = 24 * 60 * 60;
const NO_DURATION = "not a duration";

/** A duration as a person writes it; it leaves as seconds. */
export const duration = z
  .union([z.number().positive(), z.string()], NO_DURATION)
  .transform((value, context): number => {
    const seconds = typeof value === "number" ? value : secondsIn(value.trim());
    if (seconds !== null && seconds > 0 && seconds <= MAX_SECONDS) return seconds;
    context.addIssue({
      code: "custom",
      message: seconds === null ? NO_DURATION : seconds > 0 ? "longer than a day" : "no time at all",
      params: { mend: "Write seconds (420), a clock (7:00) or a text such as '7 min'." },
    });
    return z.NEVER;
  })
  .describe("Seconds, or a text such as '7 min' or '6:30'.");

function secondsIn(text: string): number | null {
  const clock = /^(\d+):([0-5]\d)$/.exec(text);
  if (clock) return Number(clock[1]) * 60 + Number(clock[2]);
  const spoken = /^(\d+(?:\.\d+)?)\s*(s|sec|seconds?|min|minutes?)$/.exec(text);
  return spoken === null ? null : Number(spoken[1]) * (spoken[2]!.startsWith("m") ? 60 : 1);
}
