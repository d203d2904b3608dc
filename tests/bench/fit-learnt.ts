// `npm run fit:learnt [-- --write]`: learns from marked sayings (all invented) what each rubric's elements sound like when
// they are said rightly and wrongly, and fits the curves by which the matcher weighs that beside the responses: on hands
// that the lines were learnt without. `--write` puts the lines into rubrics/learnt and the curves into curves.json.
import { mkdirSync, writeFileSync } from "node:fs";
import { likelihoodOf } from "../../src/matching/curve.ts";
import { SAID_ALONE, WRONG_ALONE } from "../../src/matching/learnt/by-reader.ts";
import { UNSAFE_ALONE } from "../../src/matching/learnt/unsafe-by-reader.ts";
import { STANDS_AGAINST, TURNED_LIKELY } from "../../src/matching/learnt/second-reading.ts";
import type { Learnt } from "../../src/rubric/schema.ts";
import { casesOfPassage, casesOfTalk, casesOfUnsafe, type Case } from "./learnt/cases.ts";
import { markedSayings, type MarkedSaying } from "./learnt/marked-sayings.ts";
import { learnt } from "./learnt/train.ts";
import { curveOf, fitLogistic } from "./logistic.ts";
import { readDrills } from "./match/drill.ts";
import { readPassages, rubricNamed } from "./match/passages.ts";
import { readTalk } from "./match/talk.ts";

/** Hands whose sayings the curves are fitted on, each with lines that were learnt without them: mirrored passages, and whole stations. */
const PASSAGES = /^o\d$/;
const TALK = /^w(8|9|10)$/;
/** Passages are not marked for what is unsafe; drills are. */
const DRILLS = "d6";

const sayings = markedSayings();
const names = [...new Set(sayings.map(({ rubric }) => rubric))].sort();
const write = process.argv.includes("--write");
const without = (hands: RegExp) => linesOf(sayings.filter(({ hand }) => !hands.test(hand)));

const ofPassages = without(PASSAGES);
const ofTalk = without(TALK);
const ofDrills = without(new RegExp(`^${DRILLS}$`));
const cases: Record<"passages" | "talk" | "drills", Case[]> = {
  drills: readDrills(DRILLS).flatMap(({ rubric, elements, unsafe }) => [
    ...Object.entries(unsafe).flatMap(([statement, texts]) => texts.flatMap((says) => casesOfUnsafe(rubric, says, statement, ofDrills.get(rubric)!))),
    ...Object.values(elements).flatMap(({ right }) => right.flatMap((says) => casesOfUnsafe(rubric, says, null, ofDrills.get(rubric)!))),
  ]),
  passages: readPassages("fixtures/passages-practice").filter(({ writer }) => PASSAGES.test(writer)).flatMap((passage) => casesOfPassage(passage, ofPassages.get(passage.rubric)!)),
  talk: readTalk().filter(({ name }) => TALK.test(name.replace(/^.*-/, ""))).flatMap((talk) => casesOfTalk(talk, ofTalk.get(talk.rubric)!)),
};
const all = [...cases.passages, ...cases.talk, ...cases.drills];
const fitted = (kind: Case["kind"], truth: (one: Case) => boolean) => {
  const chosen = all.filter((one) => one.kind === kind);
  return curveOf(fitLogistic(chosen.map(({ signs }) => signs), chosen.map(truth)));
};
const curves = {
  turned: fitted("turned", ({ truth }) => truth !== "right"),
  held: fitted("held", ({ truth }) => truth === "wrong"),
  right: fitted("alone", ({ truth }) => truth === "right"),
  wrong: fitted("alone", ({ truth }) => truth === "wrong"),
  unsafe: fitted("unsafe", ({ truth }) => truth === "wrong"),
};

console.log(`# What was learnt from marked sayings\n\n${sayings.length} sayings, all invented. The curves are fitted on the hands ${PASSAGES.source} and ${TALK.source}, with lines learnt without them.\n`);
for (const [collection, chosen] of Object.entries(cases)) {
  console.log(`## ${collection}\n\n| | from | right | wrong | neither |\n|---|---|---|---|---|`);
  const row = (name: string, kind: Case["kind"], curve: keyof typeof curves, cuts: readonly number[], shipped: readonly number[]) => {
    const of = chosen.filter((one) => one.kind === kind);
    if (of.length === 0) return;
    const count = (some: readonly Case[]) => (["right", "wrong", "absent"] as const).map((truth) => some.filter((one) => one.truth === truth).length).join(" | ");
    console.log(`| ${name}, all | | ${count(of)} |`);
    for (const cut of cuts) console.log(`| ${name} | ${cut}${shipped.includes(cut) ? " (as shipped)" : ""} | ${count(of.filter(({ signs }) => likelihoodOf(curves[curve], signs) >= cut))} |`);
  };
  row("fits, and is dropped", "turned", "turned", [0.5, 0.6, 0.7, 0.8, 0.85, 0.9], [TURNED_LIKELY]);
  row("is held against the speaker, and stays so", "held", "held", [0.3, 0.4, 0.5, 0.6], [STANDS_AGAINST]);
  row("no response fits, and is taken for said", "alone", "right", [0.5, 0.6, 0.7, 0.8, 0.9], Object.values(SAID_ALONE));
  row("an unsafe statement is taken for stated (wrong: it is)", "unsafe", "unsafe", [0.3, 0.4, 0.5, 0.6, 0.7, 0.8, 0.9, 0.95], [UNSAFE_ALONE]);
  row("no response fits, and is taken for said wrongly", "alone", "wrong", [0.5, 0.6, 0.7, 0.75, 0.82, 0.9], Object.values(WRONG_ALONE));
  console.log("");
}
console.log(`| curve | intercept | weights |\n|---|---|---|\n${Object.entries(curves).map(([name, { intercept, signs }]) => `| ${name} | ${intercept} | ${signs.join(", ")} |`).join("\n")}`);
if (write) {
  writeFileSync("src/matching/learnt/curves.json", `${JSON.stringify(curves)}\n`);
  mkdirSync("rubrics/learnt", { recursive: true });
  for (const [name, lines] of linesOf(sayings)) writeFileSync(`rubrics/learnt/${name}.json`, `${JSON.stringify({ saidwell: "learnt@1", id: name, ...lines })}\n`);
}

function linesOf(from: readonly MarkedSaying[]): Map<string, Learnt> {
  return new Map(names.map((name) => [name, learnt(rubricNamed(name), from)]));
}
