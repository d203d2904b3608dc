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
  "SW-R01": { title: "the rubric cannot be found or read", exit: EXIT.rubric },
  "SW-R02": { title: "the rubric is not well-formed YAML", exit: EXIT.rubric },
  "SW-R03": { title: "the rubric does not have the form of a rubric", exit: EXIT.rubric },
  "SW-R04": { title: "an included block cannot be read", exit: EXIT.rubric },
  "SW-R05": { title: "a name in the rubric leads nowhere", exit: EXIT.rubric },
  "SW-R06": { title: "an id stands twice", exit: EXIT.rubric },
  "SW-R07": { title: "a phrase and its quantity do not go together", exit: EXIT.rubric },
  // check of a rubric
  "SW-C01": { title: "an acceptable response does not earn its own element" },
  "SW-C02": { title: "an acceptable response earns another item as well" },
  "SW-C03": { title: "an acceptable response counts as said wrongly for another item" },
  "SW-C04": { title: "an acceptable response is taken for an unsafe statement", exit: EXIT.requirementNotMet },
  "SW-C05": { title: "two items cannot be told apart" },
  "SW-C06": { title: "too many acceptable responses earn another item" },
  "SW-C07": { title: "an example does not do what it is there to show", exit: EXIT.requirementNotMet },
  "SW-C08": { title: "a number has no unit, or nothing compares it" },
  "SW-C09": { title: "a critical item has no source", exit: EXIT.requirementNotMet },
  "SW-C10": { title: "a critical item has no minimum" },
  "SW-C11": { title: "a fact is due to be reviewed" },
  "SW-C12": { title: "pairs of the order contradict each other", exit: EXIT.requirementNotMet },
  "SW-C13": { title: "what the rubric asks for does not fit into its time" },
  "SW-C14": { title: "an element has few acceptable responses" },
  "SW-C15": { title: "a block is in no rubric that was checked" },
  "SW-C16": { title: "a file was left out of the check" },
  "SW-C17": { title: "there are more warnings than --max-warnings allows", exit: EXIT.requirementNotMet },
  "SW-C18": { title: "marks change, and --fail-on-change forbids it", exit: EXIT.requirementNotMet },
  "SW-C19": { title: "an acceptable response stands twice" },
  "SW-C20": { title: "an item applies to nobody" },
  "SW-C21": { title: "a responses file is named by no rubric that was checked" },
  "SW-C22": { title: "no fact names a source" },
  "SW-C23": { title: "an unsafe statement is not found in its own words" },
  "SW-C24": { title: "a wrong statement is not told in its own words" },
  "SW-C25": { title: "no response has a must-word" },
  "SW-C26": { title: "a phrase is of words that everybody says" },
  "SW-C27": { title: "a unit is said again beside {quantity}" },
  "SW-C28": { title: "a phrase of a patient's question is not heard as what it is" },
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
