/** What the process ends with. Documented in the README; a test keeps the two alike. */
export const EXIT = {
  done: 0,
  requirementNotMet: 1,
  usage: 2,
  transcript: 3,
  rubric: 4,
  station: 5,
  output: 6,
  cohortFiles: 7,
  cohort: 8,
  corrections: 9,
  internal: 70,
} as const;

export type ExitCode = (typeof EXIT)[keyof typeof EXIT];

export interface CatalogueEntry {
  /** A short name for the list of codes. */
  title: string;
  /** The exit code when this is an error; absent for what is only ever a warning. */
  exit?: ExitCode;
  /** How to mend what has this code, whatever it is about: what a finding says of its own place comes before it. */
  mend?: string;
}

/**
 * Every code the program can print. T: transcript, S: station and roles, R: rubric, C: check of a rubric, M: marking,
 * B: batch of a cohort, A: analysis of a cohort, U: usage, O: output. A code, once released, keeps its meaning.
 */
export const CATALOGUE = {
  // transcript
  "SW-T01": { title: "the transcript file cannot be read", exit: EXIT.transcript },
  "SW-T02": { title: "the transcript holds no words", exit: EXIT.transcript },
  "SW-T03": { title: "the format of the transcript cannot be told", exit: EXIT.transcript },
  "SW-T04": { title: "the text is not UTF-8 or UTF-16", exit: EXIT.transcript },
  "SW-T05": { title: "the JSON is not well formed or not a transcript", exit: EXIT.transcript },
  "SW-T06": { title: "the TextGrid is broken", exit: EXIT.transcript },
  "SW-T07": { title: "the file is larger than the limit", exit: EXIT.transcript },
  "SW-T08": { title: "the caption file is broken", exit: EXIT.transcript },
  "SW-T10": { title: "a time runs backwards" },
  "SW-T11": { title: "two stretches overlap" },
  "SW-T12": { title: "an end is missing, zero or before its start" },
  "SW-T13": { title: "a time cannot be read" },
  "SW-T14": { title: "something in the file was left out" },
  "SW-T15": { title: "the transcript has no times" },
  "SW-T16": { title: "something was read in spite of a fault in its form" },
  "SW-T17": { title: "something could be read in two ways, and one was chosen" },
  "SW-T18": { title: "a label file was edited by hand" },
  // station and roles
  "SW-S01": { title: "the recording holds several stations", exit: EXIT.station },
  "SW-S02": { title: "no words lie between the times asked for", exit: EXIT.station },
  "SW-S03": { title: "times were asked for, but the transcript has none", exit: EXIT.station },
  "SW-S04": { title: "the label named as the candidate's is not in the transcript", exit: EXIT.station },
  "SW-S05": { title: "one label mixes several voices" },
  "SW-S06": { title: "a label's name and its speech do not agree" },
  "SW-S07": { title: "it is not sure who spoke" },
  "SW-S08": { title: "the candidate started anew" },
  "SW-S09": { title: "the edge of the station was guessed" },
  "SW-S10": { title: "a role was not found" },
  // rubric
  "SW-R01": { title: "the rubric cannot be found or read", exit: EXIT.rubric, mend: "Name a file that is there, below 1 MB and saved as UTF-8, or a shipped rubric ('saidwell rubrics' lists them)." },
  "SW-R02": { title: "the rubric is not well-formed YAML", exit: EXIT.rubric, mend: "Put texts with ': ', ' #', brackets or quotes in them in quotes, and let what belongs together begin at the same column." },
  "SW-R03": { title: "the rubric does not have the form of a rubric", exit: EXIT.rubric, mend: "See 'saidwell rubric new', which has a comment on every field, or let an editor help by the schema that the first line names." },
  "SW-R04": { title: "an included block cannot be read", exit: EXIT.rubric, mend: "Name a block or responses file in the rubric's folder or below it, or 'shipped:NAME'." },
  "SW-R05": { title: "a name in the rubric leads nowhere", exit: EXIT.rubric, mend: "Write the id as it stands where the thing is described." },
  "SW-R06": { title: "an id stands twice", exit: EXIT.rubric, mend: "Give one of the two another id." },
  "SW-R07": { title: "a phrase and its quantity do not go together", exit: EXIT.rubric, mend: "Write {quantity} in the phrases of what has a 'quantity', and in no others." },
  "SW-R08": { title: "what was learnt about the rubric cannot be used", exit: EXIT.rubric, mend: "Take the file as it was written, or take 'learnt' out of the rubric." },
  // check of a rubric
  "SW-C01": { title: "an acceptable response does not earn its own element", mend: "Put it in words that tell the element from others, without denials and conditions that turn it round, and with the element's must-words." },
  "SW-C02": { title: "an acceptable response earns another item as well", mend: "Leave out of the response what belongs to the other item, or give that a must-word or not_with that keeps this out." },
  "SW-C03": { title: "an acceptable response counts as said wrongly for another item", mend: "Look at the denials and at 'incorrect' of the other item: they take the response in." },
  "SW-C04": { title: "an acceptable response is taken for an unsafe statement", exit: EXIT.requirementNotMet, mend: "Change the response, or give the unsafe statement a must-word or not_with that keeps it out." },
  "SW-C05": { title: "two items cannot be told apart", mend: "Make one item of the two, or give each a must-word of its own." },
  "SW-C06": { title: "too many acceptable responses earn another item", mend: "Mend the responses that SW-C02 names; 'saidwell rubric check FILE --confusion' shows them in a table." },
  "SW-C07": { title: "an example does not do what it is there to show", exit: EXIT.requirementNotMet, mend: "Add responses in words like the example's, or keep it out with a must-word or not_with; or move the example to the other list." },
  "SW-C08": { title: "a number has no unit, or nothing compares it", mend: "Give the element a quantity with value and unit, and write {quantity} where its phrases say the number." },
  "SW-C09": { title: "a critical item has no source", exit: EXIT.requirementNotMet, mend: "Give the item, or each of its elements, a fact with a published source, or let it not be critical." },
  "SW-C10": { title: "a critical item has no minimum", mend: "Say with 'minimum' how many of the elements are the least that is safe." },
  "SW-C11": { title: "a fact is due to be reviewed", mend: "Compare the fact with the latest edition of its source, correct what has changed, and set a new review_by." },
  "SW-C12": { title: "pairs of the order contradict each other", exit: EXIT.requirementNotMet, mend: "Take out one of the pairs, or turn it round." },
  "SW-C13": { title: "what the rubric asks for does not fit into its time", mend: "Take out items, ask for fewer elements, or give the station more time." },
  "SW-C14": { title: "an element has few acceptable responses", mend: "Add responses in other people's words." },
  "SW-C15": { title: "a block is in no rubric that was checked", mend: "Include it in a rubric, check it together with the rubrics that do, or delete it." },
  "SW-C16": { title: "a file was left out of the check", mend: "A rubric starts with 'saidwell: rubric@1', a block with 'saidwell: block@1', a responses file with 'saidwell: responses@1'." },
  "SW-C17": { title: "there are more warnings than --max-warnings allows", exit: EXIT.requirementNotMet, mend: "Mend the warnings, or allow more." },
  "SW-C18": { title: "marks change, and --fail-on-change forbids it", exit: EXIT.requirementNotMet, mend: "See whether the changes are meant." },
  "SW-C19": { title: "an acceptable response stands twice", mend: "Take one of the two out, or say it in other words." },
  "SW-C20": { title: "an item applies to nobody", mend: "Add the condition under scenario.conditions, correct its spelling, or take the item out." },
  "SW-C21": { title: "a responses file is named by no rubric that was checked", mend: "Name it with 'responses:' in its rubric or block, check it together with them, or delete it." },
  "SW-C22": { title: "no fact names a source", mend: "Name it in the fact that rests on it, or take it out." },
  "SW-C23": { title: "an unsafe statement is not found in its own words", mend: "Put the phrase in other words that tell what is unsafe, with the statement's must-words and without its not_with, or leave it out." },
  "SW-C24": { title: "a wrong statement is not told in its own words", mend: "Put the phrase in other words that tell what is wrong and that no response has, or leave it out." },
  "SW-C25": { title: "no response has a must-word", mend: "Write a word that the responses have, or take it out." },
  "SW-C26": { title: "a phrase is of words that everybody says", mend: "Say more in the phrase, or give it a must-word that has to be said near it." },
  "SW-C27": { title: "a unit is said again beside {quantity}", mend: "Take the unit out: {quantity} stands for number and unit." },
  "SW-C28": { title: "a phrase of a patient's question is not heard as what it is", mend: "Put the phrase in words that tell the question, the answer or the wrong reply from the others of the script." },
  "SW-C29": { title: "the label's words and its number differ", mend: "Let the text and the quantity say the same: value and unit." },
  "SW-C30": { title: "a fact holds in another country than the rubric's", mend: "Name where else it holds, or write what is right there under 'elsewhere'." },
  "SW-C31": { title: "an unsafe statement takes the wrong statements of an element that has none", mend: "Give the element 'incorrect' lines, or take the link out." },
  // marking: corrections of a sheet
  "SW-M01": { title: "the corrections cannot be read", exit: EXIT.corrections },
  "SW-M02": { title: "a correction does not fit the rubric", exit: EXIT.corrections },
  "SW-M03": { title: "the corrections are of another rubric or transcript", exit: EXIT.corrections },
  "SW-M04": { title: "corrections fit no rehearsal of the cohort, or several", exit: EXIT.corrections },
  // batch: a cohort
  "SW-B01": { title: "the plan of the cohort cannot be used", exit: EXIT.cohort },
  "SW-B02": { title: "a file's name does not follow the pattern", exit: EXIT.cohortFiles },
  "SW-B03": { title: "files of the folder were passed over" },
  "SW-B04": { title: "no rubric is named for a station", exit: EXIT.cohortFiles },
  "SW-B05": { title: "two files are the same attempt", exit: EXIT.cohortFiles },
  "SW-B06": { title: "the program failed on one file of the cohort", exit: EXIT.cohortFiles },
  "SW-B07": { title: "the folder for the results holds something else", exit: EXIT.output },
  "SW-B08": { title: "broken lines of earlier results are done anew" },
  "SW-B09": { title: "earlier results or sheets are no longer of the cohort" },
  "SW-B10": { title: "another run is writing to the folder", exit: EXIT.output },
  "SW-B11": { title: "the parts of a cohort do not fit together", exit: EXIT.cohort },
  "SW-B12": { title: "the folder of the cohort cannot be used", exit: EXIT.cohort },
  "SW-B13": { title: "some files of the cohort could not be marked", exit: EXIT.cohortFiles },
  "SW-B14": { title: "one stretch of a transcript is marked for two candidates" },
  // analysis of results and marks
  "SW-A01": { title: "the results cannot be read", exit: EXIT.cohort },
  "SW-A02": { title: "a part of the results was left out" },
  "SW-A03": { title: "the marks, ratings or judgements cannot be read", exit: EXIT.cohort },
  "SW-A04": { title: "the marks file holds something that is no mark", exit: EXIT.cohort },
  "SW-A05": { title: "one marker marked the same thing twice", exit: EXIT.cohort },
  "SW-A06": { title: "marks fit no result and were left out" },
  "SW-A07": { title: "there is nothing to analyse", exit: EXIT.cohort },
  "SW-A08": { title: "a table of scores or judgements holds something else", exit: EXIT.cohort },
  "SW-A09": { title: "judgements are of no station or item that is known and were left out" },
  "SW-A10": { title: "names of markers are almost the same" },
  // usage
  "SW-U01": { title: "the command line cannot be understood", exit: EXIT.usage },
  "SW-U02": { title: "no rubric was named", exit: EXIT.usage },
  "SW-U03": { title: "two options contradict each other", exit: EXIT.usage },
  "SW-U04": { title: "a requirement is not one that can be asked for", exit: EXIT.usage },
  "SW-U05": { title: "there is no such code", exit: EXIT.usage },
  "SW-U06": { title: "a requirement does not hold", exit: EXIT.requirementNotMet },
  "SW-U07": { title: "there is no such item in the rubric", exit: EXIT.usage },
  // output
  "SW-O01": { title: "the output would overwrite a file", exit: EXIT.output },
  "SW-O02": { title: "the output cannot be written", exit: EXIT.output },
  "SW-O03": { title: "the program itself failed", exit: EXIT.internal },
} as const satisfies Record<string, CatalogueEntry>;

export type FindingCode = keyof typeof CATALOGUE;
