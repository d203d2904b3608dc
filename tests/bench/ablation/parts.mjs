// What may be left out of the matcher: a module, and what stands in it instead. `whole` is the module as it is.

/** @typedef {{ name: string, module?: string, instead?: string }} Part */

const LEXICON = "src/language/lexicon.ts";
/** The lexicon's sets hold both ways ("s", "n"), everyday wordings one way ("w" sure, "l" likely). */
const withoutMeanings = (/** @type {string} */ out) => `
  const stays = (key) => !${out}.test(key);
  const among = (set) => Object.assign(Object.create(set), {
    at: (tokens, place) => set.allAt(tokens, place).find(({ value }) => stays(value)) ?? null,
    allAt: (tokens, place) => set.allAt(tokens, place).filter(({ value }) => stays(value)),
  });
  export const conceptsOf = (stem) => whole.conceptsOf(stem).filter(stays);
  export const meaningsOf = (stem) => whole.meaningsOf(stem).filter(stays);
  export const lexiconPhrases = among(whole.lexiconPhrases);
  export const heardPhrases = among(whole.heardPhrases);`;

/** @type {readonly Part[]} */
export const PARTS = [
  { name: "nothing" },
  { name: "everyday wordings", module: LEXICON, instead: withoutMeanings("/^[wl]/") },
  { name: "likely wordings only", module: LEXICON, instead: withoutMeanings("/^l/") },
  { name: "all words of the lexicon", module: LEXICON, instead: withoutMeanings("/^/") },
  { name: "homophones (pronouncing dictionary)", module: "src/language/sound.ts", instead: "export const homophonesOf = () => [];" },
  { name: "sound keys", module: "src/language/sound.ts", instead: "export class SoundIndex extends whole.SoundIndex { alike() { return []; } }" },
  { name: "repairs", module: "src/language/repair.ts", instead: "export const repairsIn = () => ({ withdrawn: new Set(), editing: new Set(), restated: [] });" },
  { name: "replies", module: "src/matching/replies.ts", instead: "export const replyPassages = () => []; export const wrongReplies = () => [];" },
  { name: "other devices", module: "src/matching/other-device.ts", instead: "export const closeOtherDevices = (passages) => [...passages];" },
  { name: "polarity gate", module: "src/matching/polarity-gate.ts", instead: 'export const readPolarity = () => "agrees";' },
  { name: "which way it goes", module: "src/matching/direction.ts", instead: "export const goesAnotherWay = () => false;" },
  { name: "the station around it (from 20%)", module: "src/matching/likelihood.json", instead: "export default Object.fromEntries(Object.entries(whole.default).map(([name, { signs }]) => [name, { intercept: 9, signs: signs.map(() => 0) }]));" },
  { name: "words beside it", module: "src/matching/beside.ts", instead: "export const turnedBy = () => 0;" },
  { name: "look-alikes assigned", module: "src/matching/assignment.ts", instead: "export const assign = (passages) => ({ kept: [...passages], lookAlikes: [] });" },
  { name: "second reader", module: "src/matching/learnt/reading.ts", instead: "export const learntReading = () => null;" },
  { name: "responses of other hands", module: "src/rubric/responses.ts", instead: "export const withResponses = (item) => item; export const withStatements = (statement) => statement;" },
];
