import { stem } from "./stem.ts";

/** A word as the matcher sees it. One written word gives one token or several ("don't", "10ml", "metered-dose"). */
export interface Token {
  /** Lower case, no punctuation; numbers keep their digits and decimal point. */
  text: string;
  stem: string;
  /** Place of the written word in the list that was tokenised. */
  word: number;
  /** The punctuation that ends the written word, on its last token: "" when there is none. */
  after: "" | "," | ";" | ":" | "." | "?" | "!" | "-";
}

/** Spoken short forms. Without an apostrophe too, as speech-to-text writes them; "well", "were" and "wed" stay words. */
const SHORT_FORMS: Record<string, string> = {
  "can't": "can not", cant: "can not", cannot: "can not", "won't": "will not", wont: "will not",
  "shan't": "shall not", "ain't": "is not", aint: "is not",
  dont: "do not", doesnt: "does not", didnt: "did not", isnt: "is not", arent: "are not", wasnt: "was not",
  werent: "were not", shouldnt: "should not", couldnt: "could not", wouldnt: "would not", mustnt: "must not",
  neednt: "need not", havent: "have not", hasnt: "has not", hadnt: "had not",
  "let's": "let us", lets: "let us", "i'm": "i am", im: "i am", ive: "i have", youve: "you have", youre: "you are",
  youll: "you will", thats: "that is", whats: "what is", theres: "there is", theyre: "they are",
  gonna: "going to", wanna: "want to", gotta: "got to", gimme: "give me", lemme: "let me", kinda: "kind of",
  dunno: "do not know", "y'know": "you know", "'cause": "because", cos: "because", cuz: "because",
  ok: "okay", "o.k": "okay",
};

const ENDINGS: readonly [RegExp, string][] = [
  [/^([a-z]+)n't$/, "$1 not"],
  [/^([a-z]+)'re$/, "$1 are"],
  [/^([a-z]+)'ve$/, "$1 have"],
  [/^([a-z]+)'ll$/, "$1 will"],
  [/^(i|you|he|she|we|they|it)'d$/, "$1 would"],
  [/^(it|that|he|she|what|there|where|here|who|how|long|when)'s$/, "$1 is"],
  [/^([a-z]+)'s$/, "$1"],
  [/^([a-z]+s)'$/, "$1"],
];

/** @param words written words in order, punctuation attached. */
export function tokenise(words: readonly string[]): Token[] {
  const tokens: Token[] = [];
  words.forEach((written, word) => {
    const parts = split(written);
    parts.forEach((text, place) =>
      tokens.push({ text, stem: stem(text), word, after: place === parts.length - 1 ? punctuationAfter(written) : "" }),
    );
  });
  return tokens;
}

function punctuationAfter(written: string): Token["after"] {
  if (/[A-Za-z]$/.test(written)) return "";
  const tail = /[.?!…,;:—–-]+["'”’)\]]*$/u.exec(written)?.[0] ?? "";
  if (tail.includes("?")) return "?";
  if (tail.includes("!")) return "!";
  if (/[.…]/u.test(tail)) return ".";
  if (/[—–-]/u.test(tail)) return "-";
  return (/[;:,]/u.exec(tail)?.[0] ?? "") as Token["after"];
}

const splitCache = new Map<string, readonly string[]>();
const CACHE_LIMIT = 50_000;

function split(written: string): readonly string[] {
  const known = splitCache.get(written);
  if (known !== undefined) return known;
  const parts = plainWords(written).flatMap((plain) => expand(plain));
  if (splitCache.size >= CACHE_LIMIT) splitCache.clear();
  splitCache.set(written, parts);
  return parts;
}

/** Most words are letters and at most one stop: nothing to fold or part. */
const SIMPLE = /^[A-Za-z]+[.,?!;:]?$/;

/** Lower case, compatibility characters folded, joined words parted, numbers kept whole. */
function plainWords(written: string): string[] {
  if (SIMPLE.test(written)) return [(/[.,?!;:]$/.test(written) ? written.slice(0, -1) : written).toLowerCase()];
  return written
    // Before anything is folded: ".5" and "1½" must not turn into 5 and 11 2.
    .replace(/(^|[^\d])\.(?=\d)/gu, "$10.")
    .replace(/(\d)\s?½/gu, "$1.5")
    .replace(/(\d)\s?¼/gu, "$1.25")
    .replace(/(\d)\s?¾/gu, "$1.75")
    .normalize("NFKC")
    .toLowerCase()
    .replace(/[’‘`´]/gu, "'")
    .normalize("NFD")
    .replace(/\p{M}/gu, "")
    .replace(/\b1\s?[⁄/]\s?2\b/gu, "half")
    .replace(/(\d)[–—-](\d)/gu, "$1 to $2")
    .replace(/(\d),(\d{3})\b/gu, "$1$2")
    .replace(/%/gu, " percent ")
    .replace(/&/gu, " and ")
    .replace(/°\s?c\b/gu, " degrees celsius ")
    .replace(/°\s?f\b/gu, " degrees fahrenheit ")
    .replace(/°/gu, " degrees ")
    .replace(/(\d)([a-zµμ])/gu, "$1 $2")
    .replace(/([a-z])(\d)/gu, "$1 $2")
    .replace(/[^\p{L}\p{N}'.]+/gu, " ")
    .replace(/(?<!\d)\.|\.(?!\d)/gu, " ")
    .split(" ")
    .map((part) => part.replace(/^'+(?!cause)|'+$/gu, (quotes, offset: number) => (offset === 0 ? "" : /s$/u.test(part.slice(0, offset)) ? quotes.slice(0, 1) : "")))
    .filter((part) => /[\p{L}\p{N}]/u.test(part));
}

function expand(plain: string): string[] {
  const short = Object.hasOwn(SHORT_FORMS, plain) ? SHORT_FORMS[plain] : undefined;
  if (short !== undefined) return short.split(" ");
  if (!plain.includes("'")) return [plain];
  for (const [ending, full] of ENDINGS) if (ending.test(plain)) return plain.replace(ending, full).split(" ");
  return [plain.replace(/'/gu, "")];
}
