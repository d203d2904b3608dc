import { Writable } from "node:stream";
import { expect, test } from "vitest";
import { showProgress } from "../../src/cli/cohort/progress.ts";

function stream(isTTY: boolean) {
  let text = "";
  const sink = new Writable({ write: (chunk, _, done) => ((text += String(chunk)), done()) });
  return Object.assign(sink, { isTTY, text: () => text });
}

test("where there is no terminal a plain line comes every ten seconds, with rate, time left and failures", () => {
  const out = stream(false);
  let now = 0;
  const progress = showProgress(1000, out, () => now);
  for (let place = 1; place <= 250; place += 1) {
    now += 100;
    progress.step({ kept: false, failed: place === 7 });
  }
  progress.stop();
  // Ten a second by the made clock: worked by hand.
  expect(out.text()).toBe(
    "saidwell cohort: 100 of 1000, 10 a second, 1:30 left, 1 failed\n" + "saidwell cohort: 200 of 1000, 10 a second, 1:20 left, 1 failed\n",
  );
});

test("what an earlier run marked does not count in the rate", () => {
  const out = stream(false);
  let now = 0;
  const progress = showProgress(1000, out, () => now);
  for (let place = 0; place < 900; place += 1) progress.step({ kept: true, failed: false });
  for (let place = 0; place < 10; place += 1) {
    now += 1000;
    progress.step({ kept: false, failed: false });
  }
  expect(out.text()).toBe("saidwell cohort: 910 of 1000, 1 a second, 1:30 left, 0 failed\n");
});

test.each([[200, 40], [100, 32], [80, 12], [60, 5]])("on a terminal of %i columns the bar leaves room for all figures", (columns, size) => {
  const out = stream(true);
  let now = 0;
  const progress = showProgress(1000, Object.assign(out, { cursorTo: () => true, moveCursor: () => true, clearLine: () => true, clearScreenDown: () => true, columns, rows: 24 }), () => now);
  now += 3600_000;
  for (let place = 0; place < 999; place += 1) progress.step({ kept: false, failed: true });
  progress.stop();
  expect(Math.max(...[...out.text().matchAll(/[\u2588\u2591]+/g)].map(([bar]) => bar.length))).toBe(size);
  if (columns >= 80) expect(out.text()).toMatch(/99% \| 999 of 1000 \| .* left \| 999 failed/);
});

test("on a terminal there is a bar and no line", () => {
  const out = stream(true);
  const progress = showProgress(2, Object.assign(out, { cursorTo: () => true, moveCursor: () => true, clearLine: () => true, clearScreenDown: () => true, columns: 100, rows: 24 }), () => 0);
  progress.step({ kept: false, failed: false });
  progress.step({ kept: false, failed: false });
  progress.stop();
  expect(out.text()).toContain("100% | 2 of 2");
  expect(out.text()).not.toContain("saidwell cohort:");
});
