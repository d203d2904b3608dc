import type { Transcript } from "../transcript/types.ts";
import { calibrated } from "./calibration.ts";
import { isPunctuated, segmentBreaks } from "./clauses.ts";
import { MARK, type Token } from "./token.ts";
import type { Role, Sentence, Turn } from "./types.ts";
import type { Voices } from "./voices.ts";

/** Silence between two words, in seconds, that parts an unpunctuated run where the file times every word. Pauses inside a phrase are mostly shorter (Goldman-Eisler 1968, from memory: half are below 0.5 s). */
const RUN_PAUSE = 0.7;
/** A pause parts a run only once it has so many words: a hesitation after two is not a sentence. */
const RUN_LEAST_WORDS = 6;

/** First word of the sentence that each token opens, by word position: true where a new sentence begins. */
function openings(transcript: Transcript, tokens: readonly Token[], roles: readonly Role[], inStation: (word: number) => boolean): Set<number> {
  const starts = new Set<number>([0]);
  const punctuated = isPunctuated(tokens);
  let run = 1;
  for (let at = 1; at < tokens.length; at++) {
    const left = tokens[at - 1]!;
    const right = tokens[at]!;
    const edge = inStation(left.word) !== inStation(right.word) || roles[at] !== roles[at - 1];
    const before = transcript.words[left.word]!;
    const after = transcript.words[right.word]!;
    const timed = !punctuated && before.timing === "measured" && after.timing === "measured" && before.end !== null && after.start !== null;
    const paused = timed && run >= RUN_LEAST_WORDS && after.start! - before.end! >= RUN_PAUSE;
    if (left.mark >= MARK.stop || edge || paused || segmentBreaks(transcript, left, right, punctuated)) {
      starts.add(openingWord(transcript, left, right));
      run = 1;
    } else run++;
  }
  return starts;
}

/** Noises between two sentences go with the segment that they stand in, lone punctuation with the sentence before. */
function openingWord(transcript: Transcript, left: Token, right: Token): number {
  let word = right.word;
  const segment = transcript.words[right.word]!.segment;
  while (word - 1 > left.word && transcript.words[word - 1]!.kind !== "word" && transcript.words[word - 1]!.segment === segment && transcript.words[left.word]!.segment !== segment) word--;
  return word;
}

/** Sentences tile all words of the transcript in order; a segment of noises alone is a sentence of unknown role. */
export function sentencesOf(transcript: Transcript, tokens: readonly Token[], voices: Voices, inStation: (word: number) => boolean): Sentence[] {
  const starts = openings(transcript, tokens, voices.roles, inStation);
  const spoken = new Set(tokens.map((token) => transcript.words[token.word]!.segment));
  for (const segment of transcript.segments) {
    if (spoken.has(segment.index)) continue;
    starts.add(segment.firstWord);
    if (segment.endWord < transcript.words.length) starts.add(segment.endWord);
  }
  const firsts = [...starts].filter((word) => word < transcript.words.length).sort((a, b) => a - b);
  let at = 0;
  return firsts.map((first, place) => {
    const end = firsts[place + 1] ?? transcript.words.length;
    const from = at;
    while (at < tokens.length && tokens[at]!.word < end) at++;
    const role = at > from ? voices.roles[from]! : "unknown";
    return { first, end, role, confidence: beliefIn(voices, from, at), inStation: inStation(tokens[from] !== undefined && at > from ? tokens[from].word : first) };
  });
}

function beliefIn(voices: Voices, from: number, end: number): number {
  if (end === from) return 0;
  let sum = 0;
  let modelled = 0;
  for (let at = from; at < end; at++) {
    sum += voices.belief[at]!;
    modelled += voices.modelled[at]!;
  }
  const mean = sum / (end - from);
  return modelled > 0 ? calibrated(mean) : mean;
}

/** Runs of sentences by one role, cut where the station starts and ends. Confidence is the mean by words. */
export function turnsFrom(sentences: readonly Sentence[]): Turn[] {
  const turns: Turn[] = [];
  let inside: boolean | undefined;
  for (const sentence of sentences) {
    const last = turns[turns.length - 1];
    if (last !== undefined && last.role === sentence.role && inside === sentence.inStation) {
      const words = last.end - last.first;
      const more = sentence.end - sentence.first;
      last.confidence = (last.confidence * words + sentence.confidence * more) / (words + more);
      last.end = sentence.end;
    } else turns.push({ first: sentence.first, end: sentence.end, role: sentence.role, confidence: sentence.confidence });
    inside = sentence.inStation;
  }
  return turns;
}
