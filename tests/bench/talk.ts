// `npm run bench:talk [-- RUBRIC...] [--only=w8] [--verbose]`: whole invented stations, every sentence annotated with what it says
// (fixtures/talk). Written by several hands that saw labels only, to tune on: everything in them has been read. So this
// measures nothing about unseen speech; bench:match and bench:stations do.
import { compiledRubric } from "../../src/mark.ts";
import { matchStation } from "../../src/matching/match.ts";
import type { Matches } from "../../src/matching/types.ts";
import type { WordSpan } from "../../src/station/types.ts";
import { contextOf } from "../../src/scoring/context.ts";
import { judgeElement } from "../../src/scoring/elements.ts";
import { toldStation } from "../../src/station/told.ts";
import { rubricNamed } from "./match/passages.ts";
import { readTalk } from "./match/talk.ts";

const chosen = process.argv.slice(2).filter((argument) => !argument.startsWith("--"));
const verbose = process.argv.includes("--verbose");
/** Talk of one round of hands: its names end so. */
const only = process.argv.find((argument) => argument.startsWith("--only="))?.slice("--only=".length) ?? "";

interface Tally {
  said: number;
  found: number;
  absent: number;
  credited: number;
  wrong: number;
  toldWrong: number;
  wrongCredited: number;
  falselyWrong: number;
  unsafe: number;
  unsafeFound: number;
  unsafeFalse: number;
}
const empty = (): Tally => ({ said: 0, found: 0, absent: 0, credited: 0, wrong: 0, toldWrong: 0, wrongCredited: 0, falselyWrong: 0, unsafe: 0, unsafeFound: 0, unsafeFalse: 0 });
const tallies = new Map<string, Tally>();
const all = empty();

for (const talk of readTalk()) {
  if ((chosen.length > 0 && !chosen.includes(talk.rubric)) || !talk.name.endsWith(only)) continue;
  const { name, sentences } = talk;
  const rubric = rubricNamed(talk.rubric);
  const station = toldStation(talk.turns, name);
  const matches = matchStation(station, compiledRubric(rubric));
  const context = contextOf(station, rubric, matches, rubric.time.limit, rubric.time.target);
  const quote = ({ first, end }: WordSpan) => station.transcript.words.slice(first, end).map(({ text }) => text).join(" ");
  const tally = tallies.get(talk.rubric) ?? empty();
  tallies.set(talk.rubric, tally);
  const count = (what: keyof Tally) => {
    tally[what] += 1;
    all[what] += 1;
  };
  const lines: string[] = [];
  const known = new Set<string>();
  for (const item of rubric.sections.flatMap((section) => section.items)) {
    for (const element of item.elements) {
      const key = `${item.id}/${element.id}`;
      known.add(key);
      const saying = sentences.filter(({ says }) => says.includes(key));
      const erring = sentences.filter(({ wrong }) => wrong.includes(key));
      const { content } = judgeElement(context, item.id, element);
      if (saying.length > 0 && erring.length === 0) {
        count("said");
        if (content === "complete") count("found");
        else if (content === "incorrect") count("falselyWrong");
        if (content !== "complete") lines.push(`- ${key} [${element.label}] said, tool ${content}${content === "incorrect" ? ` «${whereOf(matches, item.id, element.id, quote)}»` : ""}: ${saying.map(({ text }) => `"${text}"`).join(" / ")}${nearest(matches, item.id, element.id, quote)}`);
      } else if (erring.length > 0) {
        if (saying.length === 0) {
          count("wrong");
          if (content === "incorrect") count("toldWrong");
          else if (content === "complete") count("wrongCredited");
          if (content !== "incorrect") lines.push(`- ${key} [${element.label}] stated wrongly, tool ${content}${content === "complete" ? ` «${whereOf(matches, item.id, element.id, quote)}»` : ""}: ${erring.map(({ text }) => `"${text}"`).join(" / ")}${nearest(matches, item.id, element.id, quote)}`);
        }
      } else {
        count("absent");
        if (content === "complete") count("credited");
        else if (content === "incorrect") count("falselyWrong");
        if (content === "complete" || content === "incorrect") lines.push(`- ${key} [${element.label}] not said, tool ${content}: «${whereOf(matches, item.id, element.id, quote)}»`);
      }
    }
  }
  for (const { text, says, wrong } of sentences) for (const key of [...says, ...wrong]) if (!known.has(key)) lines.push(`- no element ${key}: "${text}"`);
  for (const { id } of rubric.unsafe) {
    const stated = sentences.filter(({ unsafe }) => unsafe.includes(id));
    const told = matches.unsafe.filter(({ statement }) => statement === id);
    if (stated.length > 0) count("unsafe");
    if (stated.length > 0 && told.length > 0) count("unsafeFound");
    if (stated.length === 0 && told.length > 0) count("unsafeFalse");
    if (stated.length > 0 !== told.length > 0) lines.push(`- unsafe ${id}: ${stated.length > 0 ? `stated, not found: ${stated.map(({ text }) => `"${text}"`).join(" / ")}` : `not stated, told: «${told.map(({ span }) => quote(span)).join("» «")}»`}`);
  }
  if (verbose) console.log(`\n## ${name} (${talk.quality}, ${talk.style})\n${lines.join("\n")}`);
}

console.log("\n# Annotated talk, to tune on (invented)\n\n| rubric | elements said | found | not said, credited | stated wrongly | told wrong | credited | told wrong without being so | unsafe: stated, found, false |\n|---|---|---|---|---|---|---|---|---|");
for (const [name, tally] of [...tallies, ["all", all] as const]) {
  const { said: of, found, absent, credited, wrong, toldWrong, wrongCredited, falselyWrong, unsafe, unsafeFound, unsafeFalse } = tally;
  console.log(`| ${name} | ${of} | ${found} (${((100 * found) / of).toFixed(0)}%) | ${credited} of ${absent} (${((100 * credited) / absent).toFixed(0)}%) | ${wrong} | ${toldWrong} | ${wrongCredited} | ${falselyWrong} | ${unsafe}, ${unsafeFound}, ${unsafeFalse} |`);
}

function whereOf(matches: Matches, item: string, element: string, quote: (span: WordSpan) => string): string {
  return matches.elements.filter((match) => match.item === item && match.element === element).map(({ span, response, verdict, score }) => `${quote(span)} [${verdict} ${score.toFixed(2)} ~ ${response}]`).join("» «");
}

function nearest(matches: Matches, item: string, element: string, quote: (span: WordSpan) => string): string {
  const near = matches.nearest.find((attempt) => attempt.item === item && attempt.element === element);
  return near === undefined ? "; nothing near" : `; nearest ${near.score.toFixed(2)} closed ${near.closed.join(",") || "-"} «${quote(near.span)}» ~ ${near.response}`;
}
