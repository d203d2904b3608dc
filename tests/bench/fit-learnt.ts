// `npm run fit:learnt [-- --write]`: learns from marked sayings (all invented) what each rubric's elements sound like when
// they are said rightly and wrongly, and fits the curves by which the matcher weighs that beside the responses: on hands
// that the lines were learnt without. `--write` puts the lines into rubrics/learnt and the curves into curves.json.
import { mkdirSync, writeFileSync } from "node:fs";
import { likelihoodOf, type Curve } from "../../src/matching/curve.ts";
import { SAID_ALONE, WRONG_ALONE } from "../../src/matching/learnt/by-reader.ts";
import { judgementBy } from "../../src/matching/learnt/judgement.ts";
import type { Company } from "../../src/matching/learnt/reading.ts";
import { SIGNS } from "../../src/matching/learnt/saying-signs.ts";
import { STANDS_AGAINST, STAYS_SAID } from "../../src/matching/learnt/second-reading.ts";
import { STANDS_STATED, UNSAFE_ALONE } from "../../src/matching/learnt/unsafe-by-reader.ts";
import { casesOfPassage, casesOfTalk, casesOfUnsafe, type Case, type Truth } from "./learnt/cases.ts";
import { foldOf, linesOf, linesWithoutHands } from "./learnt/folds.ts";
import { handOf, handOfTalk, markedSayings } from "./learnt/marked-sayings.ts";
import { curveOf, fitLogistic } from "./logistic.ts";
import { readDrills } from "./match/drill.ts";
import { readPassages } from "./match/passages.ts";
import { readTalk } from "./match/talk.ts";
import { fitMultinomial } from "./multinomial.ts";

const sayings = markedSayings();
const { linesFor } = linesWithoutHands(sayings);
const lines = (hand: string, rubric: string) => linesFor(hand)?.get(rubric);

/** Passages of these hands are of every category of `bench:match`, in its mixture; those of the other folds' hands are not. */
const OF_ALL_CATEGORIES = /^[hk]\d$/;
/** Passages are not marked for what is unsafe; drills are. */
const DRILLS = ["d6", "d8", "d9"];

type FoldedCase = Case & { fold: number };
const inFold = (hand: string, cases: Case[]): FoldedCase[] => cases.map((each) => ({ ...each, fold: foldOf(hand)! }));

const cases: FoldedCase[] = [
  ...readPassages("fixtures/passages-practice").flatMap((passage) => {
    const learnt = OF_ALL_CATEGORIES.test(passage.writer) ? lines(passage.writer, passage.rubric) : undefined;
    return learnt === undefined ? [] : inFold(passage.writer, casesOfPassage(passage, learnt));
  }),
  ...readTalk().flatMap((talk) => {
    const learnt = lines(handOfTalk(talk.name), talk.rubric);
    return learnt === undefined ? [] : inFold(handOfTalk(talk.name), casesOfTalk(talk, learnt));
  }),
  ...DRILLS.flatMap((round) =>
    readDrills(round).flatMap(({ rubric, writer, elements, unsafe, safe }) => {
      const hand = handOf(round, writer);
      const learnt = lines(hand, rubric)!;
      const nothing = [...Object.values(safe).flat(), ...Object.values(elements).flatMap(({ right }) => right)];
      return inFold(hand, [...Object.entries(unsafe).flatMap(([statement, texts]) => texts.flatMap((says) => casesOfUnsafe(rubric, says, statement, learnt))), ...nothing.flatMap((says) => casesOfUnsafe(rubric, says, null, learnt))]);
    }),
  ),
];

const TRUTHS: readonly Truth[] = ["right", "wrong", "absent"];
/** Of the standardised signs' weights. */
const RIDGE = 10;
const SHOWN = [0.25, 0.3, 0.4, 0.45, 0.5, 0.6, 0.7, 0.8, 0.9];

/** What a saying does to an element, by both readers. */
function fittedJudgement(chosen: readonly Case[]): Record<"right" | "wrong", Curve> {
  const outcome = { right: 0, wrong: 1, absent: null } as const;
  const [right, wrong] = fitMultinomial(chosen.map(({ signs }) => signs), chosen.map(({ truth }) => outcome[truth]), 2, RIDGE);
  return { right: right!, wrong: wrong! };
}

/** Curves about unsafe statements: what each tells, and where it is cut. */
const OF_STATEMENTS = [
  { name: "stated", says: "an unsafe statement fits, and stands", cut: STANDS_STATED },
  { name: "unsafe", says: "an unsafe statement is taken for stated", cut: { company: UNSAFE_ALONE, lonely: UNSAFE_ALONE } },
] as const;

console.log(`# What was learnt from marked sayings\n\n${sayings.length} sayings, all invented. The lines that read a hand were learnt without it (tests/bench/learnt/folds.ts). A star: as shipped.\n`);
const curves: Record<Company, Record<string, Curve>> = { company: {}, lonely: {} };
for (const company of ["company", "lonely"] as const) {
  const own = cases.filter((each) => each.company === company);
  const count = (some: readonly Case[]) => TRUTHS.map((truth) => some.filter((other) => other.truth === truth).length).join(" | ");
  console.log(`## ${company === "company" ? "In a station" : "Where hardly anything else is said"}\n`);
  const said = own.filter(({ kind }) => kind === "said");
  // Each fold is judged by curves fitted on the other.
  const judged = [...new Set(said.map(({ fold }) => fold))].flatMap((fold) => {
    const fitted = fittedJudgement(said.filter((each) => each.fold !== fold));
    return said.filter((each) => each.fold === fold).map((each) => ({ ...each, ...judgementBy(fitted, each.signs) }));
  });
  console.log(`Sayings and elements, each fold judged by curves fitted on the other. A passage that fits stays from ${STAYS_SAID[company]} on, a wrong one from ${STANDS_AGAINST[company]}; what fits nothing is taken for said from ${SAID_ALONE[company]}, for said wrongly from ${WRONG_ALONE[company]}.\n`);
  console.log(`| | from | right | wrong | neither |\n|---|---|---|---|---|\n| all | | ${count(said)} |`);
  for (const from of SHOWN) console.log(`| said rightly | ${from} | ${count(judged.filter(({ right, wrong }) => right >= from && right > wrong))} |`);
  for (const from of SHOWN) console.log(`| said wrongly | ${from} | ${count(judged.filter(({ right, wrong }) => wrong >= from && wrong > right))} |`);
  const { right, wrong } = fittedJudgement(said);
  Object.assign(curves[company], { right, wrong });
  console.log(`\n| sign | rightly | wrongly |\n|---|---|---|\n| (start) | ${right.intercept} | ${wrong.intercept} |\n${SIGNS.map((sign, place) => `| ${sign} | ${right.signs[place]} | ${wrong.signs[place]} |`).join("\n")}\n`);
  console.log("| | from | stated | not |\n|---|---|---|---|");
  for (const { name, says, cut } of OF_STATEMENTS) {
    // Where hardly anything else is said no unsafe statement is taken for stated.
    if (name === "unsafe" && company === "lonely") continue;
    const chosen = own.filter(({ kind }) => kind === name);
    const curve = (curves[company][name] = curveOf(fitLogistic(chosen.map(({ signs }) => signs), chosen.map(({ truth }) => truth === "wrong"))));
    const stated = (some: readonly Case[]) => `${some.filter(({ truth }) => truth === "wrong").length} | ${some.filter(({ truth }) => truth !== "wrong").length}`;
    console.log(`| ${says}, all | | ${stated(chosen)} |`);
    for (const from of SHOWN) console.log(`| ${says} | ${from}${cut[company] === from ? " *" : ""} | ${stated(chosen.filter(({ signs }) => likelihoodOf(curve, signs) >= from))} |`);
  }
  console.log(`\n| curve | start | weights |\n|---|---|---|\n${OF_STATEMENTS.flatMap(({ name }) => (curves[company][name] === undefined ? [] : [`| ${name} | ${curves[company][name].intercept} | ${curves[company][name].signs.join(", ")} |`])).join("\n")}\n`);
}

if (process.argv.includes("--write")) {
  writeFileSync("src/matching/learnt/curves.json", `${JSON.stringify(curves)}\n`);
  mkdirSync("rubrics/learnt", { recursive: true });
  for (const [name, own] of linesOf(sayings)) writeFileSync(`rubrics/learnt/${name}.json`, `${JSON.stringify({ saidwell: "learnt@1", id: name, ...own })}\n`);
}
