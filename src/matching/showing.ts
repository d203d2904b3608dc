import { speechPhrases } from "../language/speech-phrases.ts";

/** "Like this, you see": pointed at or done, not said. */
export const SHOWING = speechPhrases("showing");
