// Writes src/language/irregular.json: irregular forms and their base, as compromise conjugates and singularises
// them. Done once and committed, because loading compromise costs more than marking a transcript.
//   node src/build/irregular.mjs
import { writeFile } from "node:fs/promises";
import nlp from "compromise";

const VERBS =
  "become begin bend bite bleed blow break breathe bring build burn buy catch choose come cut deal do draw dream drink drive eat fall feed feel fight find fit fly forget freeze get give go grind grow hang have hear hide hit hold hurt keep know lay lead leak lean learn leave lend let lie lose make mean meet melt pay press put read ride ring rise run say see seek sell send set shake shine shoot show shrink shut sing sink sit sleep slide smell speak spell spend spill spit split spread spring stand stick sting strike swear swell swim swing take teach tear tell think throw understand wake wear wind withdraw write".split(" ");
const NOUNS = "child foot tooth man woman person mouse half leaf life knife shelf loaf thief".split(" ");

const table = {};
const add = (form, base) => {
  if (form && form !== base && /^[a-z]+$/.test(form) && !(form in table)) table[form] = base;
};
for (const base of VERBS) {
  const forms = nlp(base).tag("Infinitive").verbs().conjugate()[0] ?? {};
  for (const key of ["PastTense", "Participle"]) if (!/ed$/.test(forms[key] ?? "")) add(forms[key], base);
}
for (const base of NOUNS) add(nlp(base).tag("Singular").nouns().toPlural().text(), base);
// Forms that compromise's model lacks or that speech uses.
for (const [form, base] of [["gone", "go"], ["done", "do"], ["been", "be"], ["was", "be"], ["were", "be"], ["is", "be"], ["are", "be"], ["am", "be"], ["has", "have"], ["had", "have"], ["does", "do"], ["did", "do"], ["people", "person"], ["begun", "begin"], ["drunk", "drink"], ["swum", "swim"], ["sunk", "sink"], ["worn", "wear"], ["torn", "tear"], ["lenses", "lens"]]) add(form, base);
// Everyday words that only look like past tenses.
for (const form of ["left", "lay", "ground", "wound", "felt", "saw", "leaves", "lives"]) delete table[form];
await writeFile("src/language/irregular.json", `${JSON.stringify(Object.fromEntries(Object.entries(table).sort()), null, 1)}\n`);
