// `npm run bench:beetle [-- --data DIR] [--check]`: does a student's answer say what the reference answer says?
// Data: Beetle, Dzikovska et al., SemEval-2013 task 7, training part; CC BY-SA 3.0. Electric circuits, so neither the
// lexicon nor any rubric of this project knows the words. The matcher's own figures are weighed by a logistic
// regression that never sees the question it is judged on.
import { readFileSync } from "node:fs";
import { join } from "node:path";
import { token_set_ratio as tokenSet } from "fuzzball";
import { wordWeight } from "../../src/language/lexicon.ts";
import { tokenise, type Token } from "../../src/language/token.ts";
import { compileRubric, type CompiledRubric } from "../../src/matching/compile.ts";
import { readPolarity } from "../../src/matching/polarity-gate.ts";
import { postingsOf } from "../../src/matching/postings.ts";
import { streamOf } from "../../src/matching/stream.ts";
import { windowsFor } from "../../src/matching/windows.ts";
import type { Rubric } from "../../src/rubric/schema.ts";
import { chanceOf, fitLogistic } from "./logistic.ts";
import { toldStation } from "../../src/station/told.ts";

/** Issue 3. */
const BAR = 0.72;
const FOLDS = 10;

interface Answer {
  question: string;
  asked: string;
  reference: string;
  answer: string;
  label: string;
}

function read(data: string): Answer[] {
  const [head, ...lines] = readFileSync(join(data, "beetle", "train.tsv"), "utf8").split(/\r?\n/).filter(Boolean);
  const columns = head!.split("\t");
  const column = (fields: string[], name: string) => (fields[columns.indexOf(name)] ?? "").replace(/^"|"$/g, "").replaceAll('""', '"');
  return lines.map((line) => line.split("\t")).map((fields) => ({ question: column(fields, "question_id"), asked: column(fields, "question"), reference: column(fields, "reference_answer"), answer: column(fields, "student_answer"), label: column(fields, "label") }));
}

const compiled = new Map<string, CompiledRubric>();

/** A rubric that asks for the reference answer and nothing else. */
function rubricFor(reference: string): CompiledRubric {
  let rubric = compiled.get(reference);
  if (rubric === undefined) {
    const say = reference.toLowerCase().split(/[.;]/).map((part) => part.replace(/[^a-z0-9' ]/g, " ").trim()).filter(Boolean);
    const item = { id: "answer", kind: "tell", elements: say.map((phrase, place) => ({ id: `part-${place}`, label: "", say: [phrase] })) };
    rubric = compileRubric({ title: "", sections: [{ id: "all", items: [item] }], scenario: { task: "", label: {}, questions: [], conditions: [] }, unsafe: [] } as unknown as Rubric);
    compiled.set(reference, rubric);
  }
  return rubric;
}

const content = (tokens: readonly Token[]) => tokens.filter((token) => wordWeight(token.stem) > 0);
const weigh = (tokens: readonly Token[], has: (stem: string) => boolean) => {
  const all = tokens.reduce((sum, token) => sum + wordWeight(token.stem), 0);
  return all === 0 ? 0 : tokens.reduce((sum, token) => sum + (has(token.stem) ? wordWeight(token.stem) : 0), 0) / all;
};
const denials = (tokens: readonly Token[]) => tokens.filter(({ text }) => /^(not|no|never|without|nothing|none|cannot|neither|nor)$/.test(text)).length;
const names = (tokens: readonly Token[]) => new Set(tokens.filter(({ text }) => /^([a-z]|\d+(\.\d+)?)$/.test(text) && text !== "a" && text !== "i").map(({ text }) => text));

/** Dice's coefficient of the letter pairs of two lists of words (Dice 1945, Ecology 26). */
function alikeLetters(a: readonly Token[], b: readonly Token[]): number {
  const pairs = (tokens: readonly Token[]) => new Set(content(tokens).flatMap(({ text }) => Array.from({ length: text.length + 1 }, (_, k) => ` ${text} `.slice(k, k + 2))));
  const [left, right] = [pairs(a), pairs(b)];
  return (2 * [...left].filter((pair) => right.has(pair)).length) / (left.size + right.size || 1);
}

/** What the matcher sees in an answer beside the reference. */
function figures({ asked, reference, answer }: Answer): number[] {
  const rubric = rubricFor(reference);
  const stream = streamOf(toldStation([{ role: "candidate", says: answer }], "answer"), ["candidate"]);
  const postings = postingsOf(stream, rubric);
  let covered = 0;
  let worst = 1;
  let agrees = 0;
  let opposes = 0;
  for (const element of rubric.elements) {
    const best = element.say.flatMap((response) => windowsFor(response, postings, stream, 0.1)).sort((a, b) => b.coverage - a.coverage)[0];
    const coverage = best?.coverage ?? 0;
    covered += coverage / rubric.elements.length;
    worst = Math.min(worst, coverage);
    const polarity = best === undefined ? "none" : readPolarity(stream, best, element.vocabulary);
    if (polarity === "agrees") agrees += coverage / rubric.elements.length;
    if (polarity === "opposes") opposes += 1 / rubric.elements.length;
  }
  const said = tokenise(answer.split(/\s+/).filter(Boolean));
  const wanted = tokenise(reference.split(/\s+/).filter(Boolean));
  const question = new Set(tokenise(asked.split(/\s+/).filter(Boolean)).map(({ stem }) => stem));
  const saidStems = new Set(said.map(({ stem }) => stem));
  const wantedStems = new Set(wanted.map(({ stem }) => stem));
  const recall = weigh(content(wanted), (stem) => saidStems.has(stem));
  const precision = weigh(content(said), (stem) => wantedStems.has(stem));
  // Words that the question gives away prove little.
  const fresh = weigh(content(wanted).filter(({ stem }) => !question.has(stem)), (stem) => saidStems.has(stem));
  const added = weigh(content(said).filter(({ stem }) => !question.has(stem)), (stem) => wantedStems.has(stem));
  const [saidNames, wantedNames] = [names(said), names(wanted)];
  const strangeNames = [...saidNames].filter((name) => !wantedNames.has(name)).length;
  const missingNames = [...wantedNames].filter((name) => !saidNames.has(name)).length;
  const parity = denials(said) % 2 === denials(wanted) % 2 ? 1 : 0;
  const f1 = (2 * recall * precision) / (recall + precision || 1);
  // Words of one stem may be mis-spelt ("terminl"): bigrams of letters see through it.
  const letters = alikeLetters(said, wanted);
  const freshLetters = alikeLetters(said.filter(({ stem }) => !question.has(stem)), wanted.filter(({ stem }) => !question.has(stem)));
  const crossed = [covered * precision, covered * covered, f1 * f1, precision * Math.log(1 + said.length), covered * Math.log(1 + said.length), fresh * added, recall * parity, precision * parity, letters, letters * letters, freshLetters, Math.log(1 + wanted.length) * recall, Math.log(1 + wanted.length), strangeNames > 0 ? 1 : 0, denials(said) > 0 ? 1 : 0, denials(said) > 0 ? recall : 0];
  return [covered, worst, agrees, opposes, recall, precision, f1, fresh, added, parity, parity * covered, strangeNames, missingNames, Math.log(1 + said.length), Math.log((1 + said.length) / (1 + wanted.length)), content(said).length === 0 ? 1 : 0, tokenSet(answer.toLowerCase(), reference.toLowerCase()) / 100, ...crossed];
}

/**
 * What other questions' answers teach about words that the reference does not have: how often an answer with the word
 * (or with it in the place of a word of the reference that is missing) was right. Shrunk towards the share of all.
 */
class WordEvidence {
  private readonly counts = new Map<string, Map<string, [right: number, all: number]>>();
  private readonly byQuestion = new Map<string, [number, number]>();

  constructor(places: readonly number[], private readonly keysOf: (place: number) => string[]) {
    for (const place of places) {
      const { question, label } = answers[place]!;
      const add = (counts: [number, number] = [0, 0]): [number, number] => [counts[0] + (label === "correct" ? 1 : 0), counts[1] + 1];
      this.byQuestion.set(question, add(this.byQuestion.get(question)));
      for (const key of new Set(keysOf(place))) {
        const known = this.counts.get(key) ?? new Map<string, [number, number]>();
        known.set(question, add(known.get(question)));
        this.counts.set(key, known);
      }
    }
  }

  /** Mean and lowest log odds over the answer's keys, its own question left out. */
  of(place: number): number[] {
    const { question } = answers[place]!;
    const odds = [...new Set(this.keysOf(place))].flatMap((key) => {
      // A word right in one question may be wrong in the next: each question has one voice.
      const votes = [...(this.counts.get(key) ?? [])].filter(([other]) => other !== question).map(([other, [right, all]]) => {
        const [baseRight, baseAll] = this.byQuestion.get(other)!;
        const base = (baseRight + 1) / (baseAll + 2);
        return logit((right + SHRINK * base) / (all + SHRINK)) - logit(base);
      });
      return votes.length === 0 ? [] : [votes.reduce((sum, vote) => sum + vote, 0) / (votes.length + 1)];
    });
    if (odds.length === 0) return [0, 0, 0];
    return [odds.reduce((sum, value) => sum + value, 0) / odds.length, Math.min(...odds), Math.max(...odds)];
  }
}
const SHRINK = 4;
const logit = (chance: number) => Math.log(chance / (1 - chance));

const stemsOf = (text: string) => content(tokenise(text.split(/\s+/).filter(Boolean))).map(({ stem }) => stem);
const strange = (place: number): string[] => {
  const wanted = new Set(stemsOf(answers[place]!.reference));
  return stemsOf(answers[place]!.answer).filter((stem) => !wanted.has(stem));
};
const swapped = (place: number): string[] => {
  const said = new Set(stemsOf(answers[place]!.answer));
  const missing = stemsOf(answers[place]!.reference).filter((stem) => !said.has(stem));
  return strange(place).flatMap((stem) => missing.map((other) => `${stem} for ${other}`));
};
const missed = (place: number): string[] => {
  const said = new Set(stemsOf(answers[place]!.answer));
  return stemsOf(answers[place]!.reference).map((stem) => `${stem} ${said.has(stem) ? "said" : "missing"}`);
};

const LABELS3 = { correct: "correct", contradictory: "contradictory" } as Record<string, string>;
const threeWay = (label: string) => LABELS3[label] ?? "incorrect";

function macroF1(pairs: readonly (readonly [string, string])[]): number {
  const classes = [...new Set(pairs.map(([truth]) => truth))];
  return classes.reduce((sum, label) => {
    const hit = pairs.filter(([truth, given]) => truth === label && given === label).length;
    const all = pairs.filter(([truth]) => truth === label).length + pairs.filter(([, given]) => given === label).length;
    return sum + (2 * hit) / (all || 1) / classes.length;
  }, 0);
}

const option = process.argv.indexOf("--data");
const answers = read(option < 0 ? "../shared/data" : process.argv[option + 1]!);
const rows = answers.map(figures);
const questions = [...new Set(answers.map(({ question }) => question))].sort();
const foldOf = new Map(questions.map((question, place) => [question, place % FOLDS]));
const two: [string, string][] = [];
const three: [string, string][] = [];
const overlap: [string, string][] = [];
const peer: [string, string][] = [];
const confusion = new Map<string, number>();
for (let fold = 0; fold < FOLDS; fold += 1) {
  const places = answers.map((_, place) => place);
  const train = places.filter((place) => foldOf.get(answers[place]!.question) !== fold);
  const test = places.filter((place) => foldOf.get(answers[place]!.question) === fold);
  if (train.length === 0 || test.length === 0) continue;
  const evidence = [strange, swapped, missed].map((keysOf) => new WordEvidence(train, keysOf));
  const taught = new Map([...train, ...test].map((place) => [place, [...rows[place]!, ...evidence.flatMap((each) => each.of(place))]]));
  const right = fitLogistic(train.map((place) => taught.get(place)!), train.map((place) => answers[place]!.label === "correct"));
  const against = fitLogistic(train.map((place) => taught.get(place)!), train.map((place) => answers[place]!.label === "contradictory"));
  const cut = (score: (place: number) => number) => bestCut(train.map((place) => ({ score: score(place), truth: answers[place]!.label === "correct" })));
  const byModel = (place: number) => chanceOf(right, taught.get(place)!);
  const byOverlap = (place: number) => rows[place]![6]!;
  const byTokens = (place: number) => rows[place]![16]!;
  const cuts = { model: cut(byModel), overlap: cut(byOverlap), tokens: cut(byTokens) };
  const contra = bestCut(train.map((place) => ({ score: chanceOf(against, taught.get(place)!), truth: answers[place]!.label === "contradictory" })));
  for (const place of test) {
    const { label } = answers[place]!;
    const truth = label === "correct" ? "correct" : "other";
    const given = byModel(place) >= cuts.model ? "correct" : "other";
    two.push([truth, given]);
    overlap.push([truth, byOverlap(place) >= cuts.overlap ? "correct" : "other"]);
    peer.push([truth, byTokens(place) >= cuts.tokens ? "correct" : "other"]);
    three.push([threeWay(label), given === "correct" ? "correct" : chanceOf(against, taught.get(place)!) >= contra ? "contradictory" : "incorrect"]);
    confusion.set(`${label} taken for ${given}`, (confusion.get(`${label} taken for ${given}`) ?? 0) + 1);
  }
}

/** The cut with the best macro F1 of two classes on the questions that are fitted on. */
function bestCut(scored: { score: number; truth: boolean }[]): number {
  const ranked = [...scored].sort((a, b) => b.score - a.score);
  const positives = ranked.filter(({ truth }) => truth).length;
  let hit = 0;
  let best = { value: -1, cut: 0.5 };
  ranked.forEach(({ score, truth }, place) => {
    if (truth) hit += 1;
    if (ranked[place + 1]?.score === score) return;
    const given = place + 1;
    const rejected = ranked.length - given - (positives - hit);
    const value = (2 * hit) / (given + positives) + (2 * rejected) / (ranked.length - given + ranked.length - positives || 1);
    if (value > best.value) best = { value, cut: score };
  });
  return best.cut;
}

const result = macroF1(two);
const majority = macroF1(two.map(([truth]) => [truth, "other"]));
console.log(`# Student answers against a reference answer: ${answers.length} answers, ${questions.length} questions, each judged by a fit without it\n`);
console.log("| | two-way macro F1 |\n|---|---|");
console.log(`| saidwell's matcher | ${result.toFixed(3)} |\n| majority class | ${majority.toFixed(3)} |\n| weighted word overlap | ${macroF1(overlap).toFixed(3)} |\n| token-set ratio (fuzzball) | ${macroF1(peer).toFixed(3)} |`);
console.log(`\nThree-way macro F1 (correct, contradictory, other): ${macroF1(three).toFixed(3)}.\n\n| a person's label | taken for correct | of |\n|---|---|---|`);
for (const label of ["correct", "partially_correct_incomplete", "contradictory", "irrelevant", "non_domain"]) {
  const yes = confusion.get(`${label} taken for correct`) ?? 0;
  console.log(`| ${label} | ${yes} | ${yes + (confusion.get(`${label} taken for other`) ?? 0)} |`);
}
console.log(`\nBar: ${BAR}. ${result >= BAR ? "Met" : "NOT met"}.`);
if (process.argv.includes("--check") && result < BAR) process.exitCode = 1;
