/**
 * Closed classes of words that tell who speaks: a professional says "you", asks and directs,
 * the person counselled says "I" and answers. Classes by any grammar of English, choice our own.
 */
const CLASSES: readonly (readonly string[])[] = [
  ["i", "i'm", "i've", "i'd", "i'll", "im", "ive", "id"],
  ["my", "me", "mine", "myself"],
  ["you", "you're", "you've", "you'd", "you'll", "youre", "youve", "ya", "y'all"],
  ["your", "yours", "yourself"],
  ["we", "we're", "we've", "we'd", "we'll", "us", "our", "let's", "lets"],
  ["he", "she", "they", "he's", "she's", "they're", "they've", "his", "her", "him", "them", "their"],
  ["it", "it's", "its", "that", "that's", "thats", "this", "these", "those"],
  ["what", "when", "where", "which", "who", "why", "how", "what's", "how's", "where's", "whats", "hows"],
  ["do", "does", "did", "have", "has", "had", "are", "is", "was", "were", "can", "could", "would", "will", "should", "may"],
  ["don't", "doesn't", "didn't", "haven't", "hasn't", "isn't", "wasn't", "can't", "couldn't", "wouldn't", "won't", "n't", "dont", "didnt", "cant"],
  ["any", "anything", "anyone", "ever", "anywhere"],
  ["yes", "yeah", "yep", "yup", "yea"],
  ["no", "nope", "nah", "not", "never", "none"],
  ["okay", "ok", "right", "alright", "mm", "mhm", "mmhmm", "hmm", "mm-hmm", "uh-huh", "sure", "great", "good", "perfect", "fine", "gotcha"],
  ["um", "uh", "er", "erm", "em", "ah", "oh"],
  ["so", "well", "now", "then", "first", "next", "once", "after", "before"],
  ["and", "but", "or", "because", "if"],
  ["the", "a", "an"],
  ["to", "of", "in", "on", "for", "with", "at", "from", "about", "into"],
  ["just", "like", "kind", "sort", "really", "actually", "maybe", "probably"],
  ["thanks", "thank", "bye", "goodbye", "hello", "hi", "hey", "morning", "afternoon", "please"],
];

export const CLASS = { other: 0, i: 1, my: 2, you: 3, your: 4, we: 5, they: 6, wh: 8, auxiliary: 9, any: 11, yes: 12, no: 13, okay: 14, thanks: 21, number: 22 } as const;

const BY_WORD = new Map(CLASSES.flatMap((words, at) => words.map((word) => [word, at + 1] as const)));
const NUMBER = /^\d|^(?:one|two|three|four|five|six|seven|eight|nine|ten|twelve|fifteen|twenty|thirty|forty|fifty|hundred)$/;

/** The class of a normalised word, 0 for the open classes. */
export function wordClass(norm: string): number {
  return BY_WORD.get(norm) ?? (NUMBER.test(norm) ? CLASS.number : CLASS.other);
}
