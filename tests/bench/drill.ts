// `npm run bench:drill [-- --round=d1] [RUBRIC...] [--verbose]`: single utterances by element, right, nearly right and wrong,
// and unsafe ones, each judged as if nothing else had been said (fixtures/drill). Invented by hands that saw labels only.
// Rounds d1, d2, d4, d5 and d6 were read by who widened and mended; d3 was not and measures what that was worth.
import { compiledRubric } from "../../src/mark.ts";
import type { Matches } from "../../src/matching/types.ts";
import { matchUtterance } from "../../src/matching/utterance.ts";
import { readDrills } from "./match/drill.ts";
import { rubricNamed } from "./match/passages.ts";
import { toolReading } from "./match/tool.ts";

const chosen = process.argv.slice(2).filter((argument) => !argument.startsWith("--"));
const verbose = process.argv.includes("--verbose");
const round = process.argv.find((argument) => argument.startsWith("--round="))?.slice("--round=".length) ?? "d3";

const COLUMNS = { right: 0, found: 0, rightToldWrong: 0, near: 0, nearCredited: 0, nearToldWrong: 0, wrong: 0, told: 0, wrongCredited: 0, unsafe: 0, unsafeFound: 0, unsafeFalse: 0 };
type Tally = typeof COLUMNS;
const all: Tally = { ...COLUMNS };

console.log(`# Drills, round ${round} (invented)\n\nOne utterance at a time.\n\n| rubric | right: found | told wrong | near misses: credited | told wrong | wrong: told wrong or unsafe | credited | unsafe: found | false unsafe |\n|---|---|---|---|---|---|---|---|---|`);
const details: string[] = [];
for (const drill of readDrills(round)) {
  if (chosen.length > 0 && !chosen.includes(drill.rubric)) continue;
  const rubric = rubricNamed(drill.rubric);
  const tally: Tally = { ...COLUMNS };
  const lines: string[] = [];
  for (const item of rubric.sections.flatMap((section) => section.items)) {
    for (const element of item.elements) {
      const key = `${item.id}/${element.id}`;
      const { right = [], near = [], wrong = [] } = drill.elements[key] ?? {};
      const judge = (text: string) => toolReading({ id: drill.name, rubric: drill.rubric, item: item.id, element: element.id, turns: [{ role: "candidate", says: text }] });
      for (const text of right) {
        const { label, matches } = judge(text);
        tally.right += 1;
        if (label === "right") tally.found += 1;
        else lines.push(`- ${key} right, tool ${label}: "${text}"${whereOf(matches, key)}`);
        if (label === "wrong") tally.rightToldWrong += 1;
        if (matches.unsafe.length > 0) tally.unsafeFalse += 1;
      }
      for (const text of near) {
        const { label, matches } = judge(text);
        tally.near += 1;
        if (label === "right") tally.nearCredited += 1;
        if (label === "wrong") tally.nearToldWrong += 1;
        if (label !== "absent") lines.push(`- ${key} near miss, tool ${label}: "${text}"${whereOf(matches, key)}`);
        if (matches.unsafe.length > 0) tally.unsafeFalse += 1;
      }
      for (const text of wrong) {
        const { label, matches } = judge(text);
        tally.wrong += 1;
        if (label === "wrong" || matches.unsafe.length > 0) tally.told += 1;
        else lines.push(`- ${key} wrong, tool ${label}: "${text}"${whereOf(matches, key)}`);
        if (label === "right") tally.wrongCredited += 1;
      }
    }
  }
  for (const [statement, texts] of Object.entries(drill.unsafe)) {
    for (const text of texts) {
      tally.unsafe += 1;
      if (matchUtterance(text, compiledRubric(rubric)).unsafe.some((match) => match.statement === statement)) tally.unsafeFound += 1;
      else lines.push(`- unsafe ${statement}, not found: "${text}"`);
    }
  }
  for (const column of Object.keys(COLUMNS) as (keyof Tally)[]) all[column] += tally[column];
  console.log(row(drill.rubric, tally));
  details.push(`\n## ${drill.name} (${drill.writer})\n\n${lines.join("\n")}`);
}
console.log(row("all", all));
if (verbose) console.log(details.join("\n"));

function whereOf({ elements, nearest }: Matches, key: string): string {
  const is = ({ item, element }: { item: string; element: string }) => `${item}/${element}` === key;
  const match = elements.find(is);
  if (match !== undefined) return ` [${match.verdict} ${match.score.toFixed(2)} ~ ${match.response}]`;
  const near = nearest.find(is);
  return near === undefined ? " [nothing near]" : ` [nearest ${near.score.toFixed(2)}, closed ${near.closed.join(",") || "-"} ~ ${near.response}]`;
}

function row(name: string, { right, found, rightToldWrong, near, nearCredited, nearToldWrong, wrong, told, wrongCredited, unsafe, unsafeFound, unsafeFalse }: Tally): string {
  const share = (part: number, whole: number) => `${part} of ${whole} (${whole === 0 ? "-" : `${((100 * part) / whole).toFixed(0)}%`})`;
  return `| ${name} | ${share(found, right)} | ${rightToldWrong} | ${share(nearCredited, near)} | ${nearToldWrong} | ${share(told, wrong)} | ${share(wrongCredited, wrong)} | ${share(unsafeFound, unsafe)} | ${unsafeFalse} |`;
}
