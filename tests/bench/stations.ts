// `npm run bench:stations [-- --verbose --practice]`: the tool's marks beside a careful reader's, item by item, on the invented
// rehearsals under fixtures/rehearsals. They are invented, so this measures behaviour. Which side judges: rehearsals.ts.
import { mark } from "../../src/mark.ts";
import { rubricNamed } from "./match/passages.ts";
import { kappaOf } from "./match/scores.ts";
import { readRehearsals } from "./rehearsals.ts";
import { beyondItems, tallyTable, type Tally } from "./stations/beyond-items.ts";

interface Decision {
  reader: string;
  /** A second reader's mark, given blind. */
  second: string | undefined;
  tool: string;
  critical: boolean;
  listen: boolean;
}

const sides: Record<string, Decision[]> = { tuned: [], unseen: [] };
const unsafe = { tuned: { found: 0, missed: 0, false: 0, stations: 0 }, unseen: { found: 0, missed: 0, false: 0, stations: 0 } };
const beyond: Record<"tuned" | "unseen", Tally> = { tuned: {}, unseen: {} };
console.log("# Whole stations: the tool beside a careful reader\n\n| rehearsal | side | items alike | kappa | unsafe: reader / tool |\n|---|---|---|---|---|");
for (const { name: base, side, transcript, marks, second } of readRehearsals({ practice: process.argv.includes("--practice") })) {
  const sheet = mark(transcript, rubricNamed(marks.rubric));
  const decisions = sheet.items.flatMap((item): Decision[] => {
    const reader = marks.items[item.id]?.content;
    return reader === undefined ? [] : [{ reader, second: second?.items[item.id]?.content, tool: item.content, critical: item.critical, listen: item.listen }];
  });
  beyondItems(sheet, marks, beyond[side]);
  const told = unsafe[side];
  told.stations += 1;
  sides[side]!.push(...decisions);
  const wanted = marks.unsafe ?? [];
  const standing = [...new Set(sheet.unsafe.found.filter((statement) => !statement.corrected && !statement.listen).map(({ id }) => id))];
  told.found += wanted.filter((id) => standing.includes(id)).length;
  told.missed += wanted.filter((id) => !standing.includes(id)).length;
  told.false += standing.filter((id) => !wanted.includes(id)).length;
  console.log(`| ${base} | ${side} | ${decisions.filter(alike).length} of ${decisions.length} | ${kappaOf(decisions.map(({ reader, tool }) => [reader, tool])).toFixed(2)} | ${wanted.join(" ") || "-"} / ${standing.join(" ") || "-"} |`);
  if (process.argv.includes("--verbose")) {
    for (const item of sheet.items) if (marks.items[item.id] && marks.items[item.id]!.content !== item.content) console.log(`  - ${item.id}: reader ${marks.items[item.id]!.content}, tool ${item.content}${item.listen ? ", listen" : ""}`);
  }
}
console.log("\n| side | decisions | alike | kappa | listen | errors inside listen | critical absent, marked complete |\n|---|---|---|---|---|---|---|");
for (const [side, decisions] of Object.entries(sides)) {
  if (decisions.length === 0) continue;
  const errors = decisions.filter((decision) => !alike(decision));
  const listened = decisions.filter(({ listen }) => listen);
  const critical = decisions.filter(({ critical: is, reader }) => is && reader === "absent");
  const share = (part: number, whole: number) => (whole === 0 ? "-" : `${((100 * part) / whole).toFixed(1)}%`);
  console.log(
    `| ${side} | ${decisions.length} | ${share(decisions.length - errors.length, decisions.length)} | ${kappaOf(decisions.map(({ reader, tool }) => [reader, tool])).toFixed(3)} | ${share(listened.length, decisions.length)} | ${share(errors.filter(({ listen }) => listen).length, errors.length)} | ${critical.filter(({ tool }) => tool === "complete").length} of ${critical.length} |`,
  );
}
for (const [side, decisions] of Object.entries(sides)) {
  const twice = decisions.filter((decision): decision is Decision & { second: string } => decision.second !== undefined);
  if (twice.length === 0) continue;
  const readers = kappaOf(twice.map(({ reader, second }) => [reader, second]));
  const first = kappaOf(twice.map(({ reader, tool }) => [reader, tool]));
  const other = kappaOf(twice.map(({ second, tool }) => [second, tool]));
  console.log(`\n${side}, ${twice.length} marks given by two readers: kappa of the readers ${readers.toFixed(3)}, of the tool with the first ${first.toFixed(3)}, with the second ${other.toFixed(3)} (bar: at most 0.05 below the readers': ${Math.min(first, other) >= readers - 0.05 ? "met" : "NOT met"}).`);
}
console.log(`\n${tallyTable(beyond)}`);
console.log("\nThe tuned side is no measure of recall: its misses were read, and sentences of these rehearsals stood in the rubrics for a while (bd55703 to 22eb37b), before their replacements were written by people who knew the texts. That holds for the unsafe statement of nasal-spray-unsafe too. Judge by the unseen side.");
for (const [side, told] of Object.entries(unsafe)) console.log(`\nUnsafe statements, ${side} side, ${told.stations} stations: ${told.found} found, ${told.missed} missed, ${told.false} false alarms.`);

function alike({ reader, tool }: Decision): boolean {
  return reader === tool;
}
