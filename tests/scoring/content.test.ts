import { expect, test } from "vitest";
import { isDecided, notAskedFor } from "../../src/scoring/content.ts";
import type { Content } from "../../src/scoring/types.ts";

// The denominator holds what was decided; what cannot be told leaves it and makes the result provisional.
const KINDS: Record<Content, { decided: boolean; notAsked: boolean }> = {
  complete: { decided: true, notAsked: false },
  partial: { decided: true, notAsked: false },
  incorrect: { decided: true, notAsked: false },
  absent: { decided: true, notAsked: false },
  "cannot-tell": { decided: false, notAsked: false },
  "not-offered": { decided: false, notAsked: true },
  "not-applicable": { decided: false, notAsked: true },
};

test.each(Object.entries(KINDS) as [Content, (typeof KINDS)[Content]][])("%s: %j", (content, { decided, notAsked }) => {
  expect(isDecided(content)).toBe(decided);
  expect(notAskedFor(content)).toBe(notAsked);
});
