import { conceptsOf, QUALITY, qualityOf } from "../language/lexicon.ts";
import { tokenise } from "../language/token.ts";
import type { Phrase } from "../rubric/schema.ts";
import { NAME, readPhrase, type Slot } from "./phrase.ts";

/** A notion that must (or must not) be there: any one of its runs of stems. */
export interface WordGroup {
  text: string;
  /** Each a run of words; each word any of its keys. */
  runs: string[][][];
}

/** Names for one notion may be many, and none of them may be lost; more would come of a slip. */
const MOST_RUNS = 512;

/**
 * @param phrases entries of `must` or `not_with`, one notion each.
 * @param synonyms whether sure synonyms stand for the words too: in `must`, to be generous; not in `not_with`, where they
 *   would shut right answers out ("emergency contact" is not "call an ambulance").
 */
export function wordGroups(phrases: readonly Phrase[], synonyms: boolean): WordGroup[] {
  const keysOf = (stemmed: string) => (synonyms ? [stemmed, ...conceptsOf(stemmed).filter((set) => qualityOf(set) >= QUALITY.sure)] : [stemmed]);
  return phrases.map((text) => ({ text, runs: readPhrase(text, MOST_RUNS).flatMap((slots) => runsOf(slots, keysOf)) }));
}

/** The groups but those whose bit is set. */
export function groupsBut(groups: readonly WordGroup[], bits: number): readonly WordGroup[] {
  return bits === 0 ? groups : groups.filter((_, place) => (bits & (1 << place)) === 0);
}

/** The runs of words that slots make: alternatives of one token share a place, "can't" among them makes a run of its own. */
function runsOf(slots: readonly Slot[], keysOf: (stemmed: string) => string[]): string[][][] {
  let runs: string[][][] = [[]];
  for (const slot of slots) {
    if (slot === "name") runs = runs.map((run) => [...run, [NAME]]);
    if (typeof slot === "string") continue;
    const tokens = slot.words.map((word) => tokenise([word]).map(({ stem }) => keysOf(stem)));
    const single = tokens.filter(({ length }) => length === 1).flat(2);
    const options = [...(single.length > 0 ? [[single]] : []), ...tokens.filter(({ length }) => length > 1)];
    runs = runs.flatMap((run) => options.map((option) => [...run, ...option]));
  }
  return runs.filter(({ length }) => length > 0);
}
