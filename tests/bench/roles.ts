// `npm run bench:roles [-- --data DIR] [--check]`: who said each word, with labels and turns taken away.
// Prints the figures (as Markdown; committed as results/roles.md) beside the majority class and naive Bayes with Viterbi.
import { mapLabels } from "../../src/station/labels.ts";
import { tokenise } from "../../src/station/token.ts";
import { bayesLabels, trainBayes } from "./roles/baseline.ts";
import { correct, CORPORA, MEASURED, readCorpora, readCorrections, type Consultation } from "./roles/corpora.ts";
import { counsellingTalks } from "./roles/counselling.ts";
import { choose, tryAll, type Decodings, type Tried } from "./roles/decoding.ts";
import { accuracy, add, emptyTally, goldSentenceEnds, recall, type Tally } from "./roles/measure.ts";
import { beliefs, calibrate, fit, foldOf, read, score, weightsOf, type Belief, type Raw, type Reading } from "./roles/model.ts";
import { CORRECTIONS, DEFAULT_DATA, FOLDS } from "./roles/settings.ts";
import { strip, type Stripped, type Style } from "./roles/strip.ts";

const BARS = { primock57: 0.94, "aci-bench": 0.9, leftOut: 0.86, patientSentences: 0.85 } as const;

const option = process.argv.indexOf("--data");
const tagged = readCorpora(option < 0 ? DEFAULT_DATA : process.argv[option + 1]!);
const consultations = [...correct(tagged, readCorrections(CORRECTIONS)), ...counsellingTalks()];
const asTagged = new Map(tagged.map((each) => [each.id, each]));
const tallies = new Map<string, Tally>();
const held: Belief[] = [];
const labelled = { right: 0, all: 0, wrong: [] as string[], against: [] as number[] };

function tally(key: string): Tally {
  const found = tallies.get(key) ?? emptyTally();
  tallies.set(key, found);
  return found;
}

/** One consultation in one form of text, by a fit that has not seen it. */
interface Held {
  consultation: Consultation;
  style: Style;
  raw: Raw;
  bayes: Uint8Array;
}

function hold(training: Consultation[], tests: Consultation[]): Held[] {
  const weights = weightsOf(fit(training));
  return (["written", "bare"] as Style[]).flatMap((style) => {
    const bayes = trainBayes(training.map((each) => strip(each, style)));
    return tests.map((consultation) => {
      const stripped = strip(consultation, style);
      return { consultation, style, raw: score(weights, stripped), bayes: bayesLabels(bayes, stripped) };
    });
  });
}

function measure(protocol: string, { consultation, style, raw, bayes }: Held, decodings: Decodings): void {
  const stripped = strip(consultation, style);
  const ends = goldSentenceEnds(consultation);
  const reading = read(raw, decodings);
  const key = `${protocol}|${consultation.corpus}|${style}`;
  add(tally(`${key}|model`), stripped, reading.labels, ends);
  add(tally(`${key}|bayes`), stripped, bayes, ends);
  if (protocol !== "folds") return;
  held.push(...beliefs(stripped, reading));
  if (consultation.corpus === "aci-bench") add(tally(`${key}|as tagged`), strip(asTagged.get(consultation.id)!, style), reading.labels, ends);
  if (style === "written") mapTwoLabels(stripped, reading);
}

/** With the true turns under two labels that tell nothing: is each label given its role? */
function mapTwoLabels(stripped: Stripped, { scores, candidate }: Reading): void {
  const tokens = tokenise(stripped.transcript);
  const labels = tokens.map((token) => (stripped.sides[token.word] === "candidate" ? "Speaker 2" : "Speaker 1"));
  const { labels: mapped } = mapLabels({ transcript: stripped.transcript, tokens, labels, announced: new Uint8Array(tokens.length), around: new Uint8Array(tokens.length), spoken: tokens.map((_, at) => at), scores, options: {} });
  const right = mapped.every((each) => each.role === (each.label === "Speaker 2" ? "candidate" : "patient"));
  labelled.all++;
  if (right) labelled.right++;
  else labelled.wrong.push(stripped.id);
  if (stripped.corpus === "mts-dialog" || stripped.corpus === "counselling") return;
  for (const label of ["Speaker 1", "Speaker 2"]) {
    const of = labels.map((each, at) => (each === label ? (label === "Speaker 2" ? candidate[at]! : 1 - candidate[at]!) : null)).filter((belief) => belief !== null);
    labelled.against.push(of.filter((belief) => belief < 0.1).length / of.length);
  }
}

// Decoding is never chosen on what it is measured on: for a fold on the other folds, for a corpus on the other two.
const folds = foldOf(consultations);
const byFold = Array.from({ length: FOLDS }, (_, fold) => hold(consultations.filter((each) => folds.get(each.id) !== fold), consultations.filter((each) => folds.get(each.id) === fold)));
const tried: Tried[] = byFold.flatMap((all, fold) => all.map(({ consultation, raw }) => tryAll(raw, consultation.corpus, fold)));
for (const [fold, all] of byFold.entries()) {
  const decodings = choose(tried.filter((each) => each.fold !== fold));
  for (const each of all) measure("folds", each, decodings);
}
for (const corpus of MEASURED) {
  const decodings = choose(tried.filter((each) => each.corpus !== corpus));
  for (const each of hold(consultations.filter((one) => one.corpus !== corpus), consultations.filter((one) => one.corpus === corpus))) measure("left out", each, decodings);
}

const figure = (value: number): string => value.toFixed(3);
const share = (part: number, whole: number): string => (whole === 0 ? "-" : figure(part / whole));

function row(name: string, found: Tally): string {
  const majority = Math.max(found.candidateWords, found.words - found.candidateWords) / found.words;
  return `| ${name} | ${figure(accuracy(found))} | ${figure(majority)} | ${share(found.longRecalled, found.longSentences)} | ${share(found.shortRecalled, found.shortSentences)} | ${found.swapped.length} of ${found.consultations} |`;
}

const HEAD = "| corpus | words right | majority | patient's sentences of 4 words and more recalled | shorter | mostly wrong |\n|---|---|---|---|---|---|";
const TITLES = { folds: `Consultations not used to fit (${FOLDS} folds over each corpus, of the invented one by hand)`, "left out": "Corpus left out of the fit" } as const;
console.log(`# Who said each word\n\nCommand: \`npm run bench:roles\`. Labels stripped, turns merged into paragraphs of about 20 seconds, unit the word. Decoding is chosen on other folds, for a corpus left out on the other corpora.`);
console.log(`Data: primock57 (35 consultations), aci-bench (67 encounters, speaker tags corrected by corrections.yaml), mts-dialog (1,201 short dialogues), each CC BY 4.0; counselling (${consultations.filter(({ corpus }) => corpus === "counselling").length} talks by ${new Set(consultations.flatMap(({ hand }) => hand ?? [])).size} hands, fixtures/dialogue and fixtures/talk) is invented.`);
for (const protocol of ["folds", "left out"] as const) {
  for (const style of ["written", "bare"] as const) {
    console.log(`\n## ${TITLES[protocol]}, ${style === "written" ? "text as it is" : "case and punctuation stripped"}\n\n${HEAD}`);
    for (const corpus of MEASURED) {
      console.log(row(`${corpus}: model`, tally(`${protocol}|${corpus}|${style}|model`)));
      const tags = tallies.get(`${protocol}|${corpus}|${style}|as tagged`);
      if (tags !== undefined) console.log(row(`${corpus}: model, against the source's own tags`, tags));
      console.log(row(`${corpus}: naive Bayes, Viterbi`, tally(`${protocol}|${corpus}|${style}|bayes`)));
    }
  }
}

const { slope, intercept } = calibrate(held);
console.log(`\n## Is the confidence true?\n\nSentences as found on the held-out folds, both forms of text, weighed by words; calibration slope ${slope}, intercept ${intercept}.\n\n| confidence | words | mean confidence | words right |\n|---|---|---|---|`);
const EDGES = [0.5, 0.6, 0.7, 0.8, 0.9, 0.95, 0.98, 1.001];
for (const [at, from] of EDGES.slice(0, -1).entries()) {
  let [words, right, sum] = [0, 0, 0];
  for (const each of held) {
    const p = Math.min(1 - 1e-4, Math.max(1e-4, each.mean));
    const confidence = 1 / (1 + Math.exp(-(intercept + slope * Math.log(p / (1 - p)))));
    if (confidence < from || confidence >= EDGES[at + 1]!) continue;
    words += each.words;
    right += each.right;
    sum += confidence * each.words;
  }
  if (words > 0) console.log(`| ${from} to ${Math.min(1, EDGES[at + 1]!)} | ${words} | ${figure(sum / words)} | ${figure(right / words)} |`);
}
const against = labelled.against.sort((a, b) => a - b);
console.log(`\n## Labels that tell nothing\n\nTrue turns under "Speaker 1" and "Speaker 2": both roles right in ${labelled.right} of ${labelled.all} consultations${labelled.wrong.length === 0 ? "" : ` (wrong: ${labelled.wrong.slice(0, 12).join(", ")}${labelled.wrong.length > 12 ? ", ..." : ""})`}. Share of a true label's words that the model gives to the other role with 0.9 or more, primock57 and aci-bench: median ${figure(against[Math.floor(against.length / 2)] ?? 0)}, 95th centile ${figure(against[Math.floor(against.length * 0.95)] ?? 0)}, highest ${figure(against[against.length - 1] ?? 0)}.`);

const misses: string[] = [];
const bar = (name: string, value: number, least: number): void => {
  console.log(`- ${name}: ${figure(value)}, bar ${least}${value >= least ? "" : " MISSED"}`);
  if (value < least) misses.push(name);
};
console.log("\n## Bars\n");
bar("primock57, words right", accuracy(tally("folds|primock57|written|model")), BARS.primock57);
bar("aci-bench (corrected), words right", accuracy(tally("folds|aci-bench|written|model")), BARS["aci-bench"]);
for (const corpus of CORPORA) bar(`${corpus} left out, words right`, accuracy(tally(`left out|${corpus}|written|model`)), BARS.leftOut);
bar("primock57, patient's sentences recalled", recall(tally("folds|primock57|written|model")), BARS.patientSentences);
if (process.argv.includes("--check") && misses.length > 0) process.exitCode = 1;
