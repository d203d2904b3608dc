import polarityData from "./lexicon/polarity.yaml";
import type { LexiconFile } from "./lexicon/schema.ts";
import { phraseList } from "./phrase-set.ts";
import type { Token } from "./token.ts";

const LEXICON = polarityData as LexiconFile<"polarity">;
const LOOKS = phraseList(LEXICON.looks);
const LOOKED_FOR = phraseList(LEXICON.looked_for, { by: "text" });
const UNABLE_TO = phraseList(LEXICON.unable, { by: "text" });

/** "Need not look", "no need to look": but "never look for it" may tell what must not be there. */
const DENIES_LOOKING = /^(not|to|bother)$/;

/** Behind the verb that looks, so many tokens may stand before what is looked for is named; and so many name it. */
const LOOKING = { before: 8, behind: 6 } as const;

/** What somebody cannot do is said in so many words. */
const UNABLE = 4;

/**
 * By token, whether what it says comes to the same denied or not: it is looked for ("make sure there's no fluff", "look
 * for fluff"), or somebody cannot or can hardly do it.
 */
export function eitherWay(tokens: readonly Token[], denied: readonly boolean[]): boolean[] {
  const same = tokens.map(() => false);
  const mark = (first: number, reach: number) => {
    for (let k = first; k < Math.min(tokens.length, first + reach); k += 1) {
      same[k] = true;
      if (/[.?!;]/.test(tokens[k]!.after)) return;
    }
  };
  for (let place = 0; place < tokens.length; place += 1) {
    const looks = LOOKS.at(tokens, place);
    // "No need to look for fluff": the looking itself is denied.
    if (looks !== null && !(denied[place] && DENIES_LOOKING.test(tokens[place - 1]?.text ?? ""))) {
      for (let k = looks.end; k < Math.min(tokens.length, looks.end + LOOKING.before); k += 1) {
        const named = LOOKED_FOR.at(tokens, k);
        if (named !== null) mark(named.end, LOOKING.behind);
        if (named !== null || /[.?!;]/.test(tokens[k]!.after)) break;
      }
    }
    const unable = UNABLE_TO.at(tokens, place);
    if (unable !== null) mark(unable.end, UNABLE);
  }
  return same;
}
