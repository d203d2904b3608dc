// `npm run bench:polarity [-- --data DIR] [--check]`: denials against human annotations of clinical sentences.
// Data: NegEx annotations, Chapman et al., Apache 2.0. Written notes, so spoken instructions are judged elsewhere.
import { readFileSync } from "node:fs";
import { join } from "node:path";
import { clausesOf } from "../../src/language/clause.ts";
import { polarityOf } from "../../src/language/polarity.ts";
import { tokenise } from "../../src/language/token.ts";

/** Issue 3. */
const BAR = 0.93;

interface Annotation {
  concept: string;
  sentence: string;
  negated: boolean;
}

function annotations(data: string): Annotation[] {
  const text = readFileSync(join(data, "negex", "annotations-reports-1-60.tsv"), "utf8");
  return text
    .split(/\r?\n/)
    .slice(1)
    .map((line) => line.split("\t").map((field) => field.replace(/^"|"$/g, "")))
    .flatMap(([, concept, sentence, label]) => (concept && sentence && label ? [{ concept, sentence, negated: label === "Negated" }] : []));
}

/** The annotated occurrence stands in capitals in its sentence. */
function reads({ concept, sentence }: Annotation): boolean {
  const words = sentence.split(/\s+/).filter(Boolean);
  const tokens = tokenise(words);
  const wanted = tokenise(concept.split(/\s+/).filter(Boolean)).map((token) => token.text);
  const starts = tokens.flatMap((_, place) => (wanted.every((text, k) => tokens[place + k]?.text === text) ? [place] : []));
  const capital = (place: number) => words[tokens[place]!.word] === words[tokens[place]!.word]!.toUpperCase();
  const start = starts.find(capital) ?? starts[0] ?? tokens.findIndex((_, place) => capital(place));
  const last = Math.min(tokens.length - 1, Math.max(0, start) + wanted.length - 1);
  return polarityOf(tokens, clausesOf(tokens))[last]?.negated ?? false;
}

const option = process.argv.indexOf("--data");
const rows = annotations(option < 0 ? "../shared/data" : process.argv[option + 1]!);
const count = { right: 0, affirmed: 0, truePositive: 0, falsePositive: 0, falseNegative: 0 };
for (const row of rows) {
  const read = reads(row);
  if (read === row.negated) count.right += 1;
  if (!row.negated) count.affirmed += 1;
  if (read && row.negated) count.truePositive += 1;
  if (read && !row.negated) count.falsePositive += 1;
  if (!read && row.negated) count.falseNegative += 1;
}
const accuracy = count.right / rows.length;
const precision = count.truePositive / (count.truePositive + count.falsePositive);
const recall = count.truePositive / (count.truePositive + count.falseNegative);
console.log("# Polarity on NegEx annotations (reports 1 to 60)\n");
console.log("| | accuracy | precision of denials | recall of denials |\n|---|---|---|---|");
console.log(`| saidwell, ${rows.length} sentences | ${accuracy.toFixed(3)} | ${precision.toFixed(3)} | ${recall.toFixed(3)} |`);
console.log(`| majority class (affirmed) | ${(count.affirmed / rows.length).toFixed(3)} | | 0 |`);
console.log(`\nBar: accuracy at least ${BAR}. ${accuracy >= BAR ? "Met" : "NOT met"}.`);
if (process.argv.includes("--check") && accuracy < BAR) process.exitCode = 1;
