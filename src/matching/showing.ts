import { speechPhrases } from "../language/speech-phrases.ts";
import type { Passage } from "./passages.ts";
import { inOneSentence, type Stream } from "./stream.ts";

/** "Like this, you see": pointed at or done, not said. */
export const SHOWING = speechPhrases("showing");

/** To a set of phrases one determiner is as good as another: "like a lemonade" shows nothing. */
const OTHER_DETERMINER = /^(my|your|his|her|their|our|the|a|an)$/;
/** "Stay like that", "something like that": points back at what was said. */
const POINTS_BACK = /^(stay|stays|leave|leaves|left|keep|keeps|kept|remain|sit|something|anything|things|stuff|feel|feels|felt|is|was|are|be|sound|sounds|look|looks|say|said)$/;

/**
 * Whether the speaker shows what the passage half says: its own words are there, only the number may be wanting, and
 * "like this" stands in the same sentence. What another sentence shows is another thing.
 * @param near tokens between the passage and the showing at most, where speech has no full stops.
 */
export function isShown({ element, closed, first, end }: Passage, stream: Stream, near: number): boolean {
  if (element.kind !== "tell" || closed.includes("must")) return false;
  const { tokens, turnOf } = stream;
  return SHOWING.find(tokens, Math.max(0, first - near), Math.min(tokens.length, end + near)).some((hit) => {
    if (turnOf[hit.first] !== turnOf[first] || POINTS_BACK.test(tokens[hit.first - 1]?.text ?? "") || OTHER_DETERMINER.test(tokens[hit.end - 1]!.text) || tokens[hit.end - 1]!.after === "?") return false;
    return inOneSentence(stream, Math.min(first, hit.first), Math.max(end, hit.end) - 1);
  });
}
