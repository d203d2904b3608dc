// `npm run fit:learnt [-- --write]`: learns from marked sayings (all invented) what each rubric's elements sound like when
// they are said rightly and wrongly, and fits the curves by which the matcher weighs that beside the responses: on hands
// that the lines were learnt without. `--write` puts the lines into rubrics/learnt and the curves into curves.json.
import { mkdirSync, writeFileSync } from "node:fs";
import { likelihoodOf, type Curve } from "../../src/matching/curve.ts";
import { SAID_ALONE, WRONG_ALONE } from "../../src/matching/learnt/by-reader.ts";
import type { Company } from "../../src/matching/learnt/reading.ts";
import { NUMBER_LIKELY } from "../../src/matching/learnt/number-by-reader.ts";
import { STANDS_AGAINST, TURNED_LIKELY } from "../../src/matching/learnt/second-reading.ts";
import { STANDS_STATED, UNSAFE_ALONE } from "../../src/matching/learnt/unsafe-by-reader.ts";
import { casesOfPassage, casesOfTalk, casesOfUnsafe, type Case } from "./learnt/cases.ts";
import { linesOf, linesWithoutHands } from "./learnt/folds.ts";
import { handOf, handOfTalk, markedSayings } from "./learnt/marked-sayings.ts";
import { curveOf, fitLogistic } from "./logistic.ts";
import { readDrills } from "./match/drill.ts";
import { readPassages } from "./match/passages.ts";
import { readTalk } from "./match/talk.ts";

const sayings = markedSayings();
const { linesFor } = linesWithoutHands(sayings);
const lines = (hand: string, rubric: string) => linesFor(hand)?.get(rubric);

/** Passages are not marked for what is unsafe; drills are. */
const DRILLS = ["d6", "d8", "d9"];

const cases: Case[] = [
  ...readPassages("fixtures/passages-practice").flatMap((passage) => {
    const learnt = lines(passage.writer, passage.rubric);
    return learnt === undefined ? [] : casesOfPassage(passage, learnt);
  }),
  ...readTalk().flatMap((talk) => {
    const learnt = lines(handOfTalk(talk.name), talk.rubric);
    return learnt === undefined ? [] : casesOfTalk(talk, learnt);
  }),
  ...DRILLS.flatMap((round) =>
    readDrills(round).flatMap(({ rubric, writer, elements, unsafe, safe }) => {
      const learnt = lines(handOf(round, writer), rubric)!;
      const nothing = [...Object.values(safe).flat(), ...Object.values(elements).flatMap(({ right }) => right)];
      return [...Object.entries(unsafe).flatMap(([statement, texts]) => texts.flatMap((says) => casesOfUnsafe(rubric, says, statement, learnt))), ...nothing.flatMap((says) => casesOfUnsafe(rubric, says, null, learnt))];
    }),
  ),
];

/** Each curve: the cases that it is fitted on, what it tells, and where it is cut. */
const CURVES = [
  { name: "turned", kind: "turned", says: "fits, and is dropped", truth: ({ truth }: Case) => truth !== "right", cut: TURNED_LIKELY },
  { name: "held", kind: "held", says: "is held against the speaker, and stays so", truth: ({ truth }: Case) => truth === "wrong", cut: STANDS_AGAINST },
  { name: "right", kind: "alone", says: "no response fits, and is taken for said", truth: ({ truth }: Case) => truth === "right", cut: SAID_ALONE },
  { name: "wrong", kind: "alone", says: "no response fits, and is taken for said wrongly", truth: ({ truth }: Case) => truth === "wrong", cut: WRONG_ALONE },
  { name: "number", kind: "number", says: "another number is said, and is taken for the element's (wrong: it is)", truth: ({ truth }: Case) => truth === "wrong", cut: NUMBER_LIKELY },
  { name: "stated", kind: "stated", says: "an unsafe statement fits, and stands (wrong: it is stated)", truth: ({ truth }: Case) => truth === "wrong", cut: STANDS_STATED },
  { name: "unsafe", kind: "unsafe", says: "an unsafe statement is taken for stated (wrong: it is)", truth: ({ truth }: Case) => truth === "wrong", cut: { company: UNSAFE_ALONE, lonely: UNSAFE_ALONE } },
] as const;
const SHOWN = [0.3, 0.4, 0.5, 0.6, 0.7, 0.8, 0.85, 0.9];

console.log(`# What was learnt from marked sayings\n\n${sayings.length} sayings, all invented. The curves are fitted on hands that the lines were learnt without (tests/bench/learnt/folds.ts). A star: as shipped.\n`);
const curves: Record<Company, Record<string, Curve>> = { company: {}, lonely: {} };
const fitted = (chosen: readonly Case[], truth: (one: Case) => boolean) => curveOf(fitLogistic(chosen.map(({ signs }) => signs), chosen.map(truth)));
for (const company of ["company", "lonely"] as const) curves[company]["turned"] = fitted(cases.filter((one) => one.kind === "turned" && one.company === company), ({ truth }) => truth !== "right");
/** What fits is no saying by itself, unless it is dropped. */
const standsAlone = ({ unlessFits }: Case) => unlessFits === undefined || likelihoodOf(curves[unlessFits.company]["turned"]!, unlessFits.signs) >= TURNED_LIKELY[unlessFits.company];
for (const company of ["company", "lonely"] as const) {
  console.log(`## ${company === "company" ? "In a station" : "Where hardly anything else is said"}\n\n| | from | right | wrong | neither |\n|---|---|---|---|---|`);
  for (const { name, kind, says, truth, cut } of CURVES) {
    // Where hardly anything else is said no unsafe statement is taken for stated.
    if (name === "unsafe" && company === "lonely") continue;
    const chosen = cases.filter((one) => one.kind === kind && one.company === company && standsAlone(one));
    const curve = (curves[company][name] ??= fitted(chosen, truth));
    const count = (some: readonly Case[]) => (["right", "wrong", "absent"] as const).map((one) => some.filter((other) => other.truth === one).length).join(" | ");
    console.log(`| ${says}, all | | ${count(chosen)} |`);
    for (const from of SHOWN) console.log(`| ${says} | ${from}${cut[company] === from ? " *" : ""} | ${count(chosen.filter(({ signs }) => likelihoodOf(curve, signs) >= from))} |`);
  }
  console.log(`\n| curve | intercept | weights |\n|---|---|---|\n${Object.entries(curves[company]).map(([name, { intercept, signs }]) => `| ${name} | ${intercept} | ${signs.join(", ")} |`).join("\n")}\n`);
}

if (process.argv.includes("--write")) {
  writeFileSync("src/matching/learnt/curves.json", `${JSON.stringify(curves)}\n`);
  mkdirSync("rubrics/learnt", { recursive: true });
  for (const [name, own] of linesOf(sayings)) writeFileSync(`rubrics/learnt/${name}.json`, `${JSON.stringify({ saidwell: "learnt@1", id: name, ...own })}\n`);
}
