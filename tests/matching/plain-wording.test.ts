import { expect, test } from "vitest";
import { plainWording } from "../../src/matching/plain-wording.ts";

const heard = (text: string) => new Set(text.split(" "));

test("a phrase of a rubric reads as one sentence, with the alternatives that were spoken", () => {
  expect(plainWording("stir|whisk it until it (looks|gets) (foamy|frothy)", heard("then whisk it till it gets frothy"))).toBe("whisk it until it gets frothy");
});

test("the first alternative stands where none was spoken", () => {
  expect(plainWording("stir|whisk it", heard("beat"))).toBe("stir it");
});

test("of groups of several words the one that was spoken is shown", () => {
  expect(plainWording("leave it (in the shed|on the roof)", heard("put it on the roof"))).toBe("leave it on the roof");
});

test("no sign of the notation is left", () => {
  expect(plainWording("wait {quantity} (and then|before) you {name}|they sing", heard(""))).not.toMatch(/[(){}|]/);
});
