import { SoundIndex } from "../language/sound.ts";
import { SplitIndex } from "./split-words.ts";
import type { CompiledElement, CompiledRubric, CompiledStatement } from "./compile.ts";
import type { Response, Term } from "./response.ts";
import { TermIndex } from "./term-index.ts";

/*
 * A compiled rubric as plain data. Compiling takes longer than marking, so the build does it for the shipped rubrics.
 * Texts, lists of keys and terms are listed once, because the responses of a rubric use the same over and over; and
 * terms and responses are rows of numbers in two long lists, because reading them is part of every start.
 */

type Of<Whole, Lists extends keyof Whole> = Omit<Whole, Lists> & Record<Lists, Span>;
/** Place of the first response in the list of responses, and how many they are. */
type Span = [first: number, count: number];
type PackedElement = Of<Omit<CompiledElement, "elsewhere" | "anchors" | "vocabulary">, "say" | "incorrect"> & {
  elsewhere: Of<CompiledElement["elsewhere"][number], "responses">[];
  anchors: string[];
};

export interface PackedRubric {
  texts: string[];
  /** Each key with its quality behind it. */
  keys: (string | number)[][];
  /** Rows of text, keys, weight, flags. */
  terms: number[];
  /** Rows of text, weight, own weight, plain weight, length, flags, without, by number, number of terms, and the terms. */
  responses: number[];
  elements: PackedElement[];
  unsafe: Of<CompiledStatement, "say">[];
  questions: Of<CompiledRubric["questions"][number], "says" | "answer" | "incorrect">[];
  cues: Of<CompiledRubric["cues"][number], "says">[];
  vocabulary: string[];
  /** Each word that may be split with its sounds behind it. */
  splits: string[];
  devices: number[];
}

const TERM_FLAGS = { direction: 1, plain: 2, negated: 4, eitherWay: 8, supposed: 16, needed: 32, conceded: 64 } as const;
const LITERAL = 4;
const ASKS = ["no", "closed", "open"] as const;

/** A list without repeats. */
class Table<Entry> {
  readonly entries: Entry[] = [];
  private readonly places = new Map<string, number>();

  place(name: string, entry: () => Entry): number {
    let known = this.places.get(name);
    if (known === undefined) this.places.set(name, (known = this.entries.push(entry()) - 1));
    return known;
  }
}

export function packRubric(rubric: CompiledRubric): PackedRubric {
  const texts = new Table<string>();
  const keys = new Table<(string | number)[]>();
  const terms = new Table<number[]>();
  const rows: number[][] = [];
  const text = (written: string) => texts.place(written, () => written);
  const term = (one: Term) => {
    const flags = (Object.keys(TERM_FLAGS) as (keyof typeof TERM_FLAGS)[]).reduce((sum, name) => sum + (one[name] ? TERM_FLAGS[name] : 0), 0);
    const list = one.keys.flatMap(({ key, quality }) => [key, quality]);
    const row = [text(one.text), keys.place(JSON.stringify(list), () => list), one.weight, flags];
    return terms.place(JSON.stringify(row), () => row);
  };
  const pack = (responses: readonly Response[]): Span => {
    const first = rows.length;
    for (const { text: written, terms: own, weight, ownWeight, plainWeight, length, asks, literal, without, byNumber } of responses) {
      rows.push([text(written), weight, ownWeight, plainWeight, length, ASKS.indexOf(asks) + (literal ? LITERAL : 0), without, byNumber, own.length, ...own.map(term)]);
    }
    return [first, responses.length];
  };
  return {
    elements: rubric.elements.map(({ vocabulary: _, ...element }) => ({
      ...element,
      say: pack(element.say),
      incorrect: pack(element.incorrect),
      elsewhere: element.elsewhere.map((other) => ({ ...other, responses: pack(other.responses) })),
      anchors: [...element.anchors],
    })),
    unsafe: rubric.unsafe.map((statement) => ({ ...statement, say: pack(statement.say) })),
    questions: rubric.questions.map((question) => ({ ...question, says: pack(question.says), answer: pack(question.answer), incorrect: pack(question.incorrect) })),
    cues: rubric.cues.map((cue) => ({ ...cue, says: pack(cue.says) })),
    vocabulary: [...rubric.vocabulary],
    splits: [...rubric.splits.sounds],
    devices: [...rubric.devices],
    texts: texts.entries,
    keys: keys.entries,
    terms: terms.entries.flat(),
    responses: rows.flat(),
  };
}

/** @param learnt the rubric's own: it goes with the rubric and is not packed twice. */
export function unpackRubric(packed: PackedRubric, learnt: CompiledRubric["learnt"]): CompiledRubric {
  const responses = unpackResponses(packed);
  const unpack = ([first, count]: Span) => responses.slice(first, first + count);
  const vocabulary = new Set(packed.vocabulary);
  const parts = {
    elements: packed.elements.map((element) => {
      const say = unpack(element.say);
      let known: Set<string> | undefined;
      return {
        ...element,
        say,
        incorrect: unpack(element.incorrect),
        elsewhere: element.elsewhere.map((other) => ({ ...other, responses: unpack(other.responses) })),
        anchors: new Set(element.anchors),
        // Few transcripts ask for it.
        get vocabulary() {
          return (known ??= vocabularyOf(say));
        },
      };
    }),
    unsafe: packed.unsafe.map((statement) => ({ ...statement, say: unpack(statement.say) })),
    questions: packed.questions.map((question) => ({ ...question, says: unpack(question.says), answer: unpack(question.answer), incorrect: unpack(question.incorrect) })),
    cues: packed.cues.map((cue) => ({ ...cue, says: unpack(cue.says) })),
    sounds: new SoundIndex(vocabulary),
    splits: new SplitIndex(packed.splits),
    vocabulary,
    devices: new Set(packed.devices),
    learnt,
  };
  return { ...parts, terms: new TermIndex(parts) };
}

/** Every key of the terms of these responses. */
export function vocabularyOf(responses: readonly Response[]): Set<string> {
  const keys = new Set<string>();
  for (const { terms } of responses) for (const term of terms) for (const { key } of term.keys) keys.add(key);
  return keys;
}

function unpackResponses({ texts, keys: keyRows, terms: termRows, responses: rows }: PackedRubric): Response[] {
  const keys: Term["keys"][] = [];
  for (const row of keyRows) {
    const list: Term["keys"] = [];
    for (let at = 0; at < row.length; at += 2) list.push({ key: row[at] as string, quality: row[at + 1] as number });
    keys.push(list);
  }
  const terms: Term[] = [];
  for (let at = 0; at < termRows.length; at += 4) {
    const flags = termRows[at + 3]!;
    terms.push({
      text: texts[termRows[at]!]!,
      keys: keys[termRows[at + 1]!]!,
      weight: termRows[at + 2]!,
      direction: (flags & TERM_FLAGS.direction) !== 0,
      plain: (flags & TERM_FLAGS.plain) !== 0,
      negated: (flags & TERM_FLAGS.negated) !== 0,
      eitherWay: (flags & TERM_FLAGS.eitherWay) !== 0,
      supposed: (flags & TERM_FLAGS.supposed) !== 0,
      needed: (flags & TERM_FLAGS.needed) !== 0,
      conceded: (flags & TERM_FLAGS.conceded) !== 0,
    });
  }
  const responses: Response[] = [];
  for (let at = 0; at < rows.length; ) {
    const flags = rows[at + 5]!;
    const end = at + 9 + rows[at + 8]!;
    const own: Term[] = [];
    for (let k = at + 9; k < end; k += 1) own.push(terms[rows[k]!]!);
    responses.push({
      text: texts[rows[at]!]!,
      terms: own,
      weight: rows[at + 1]!,
      ownWeight: rows[at + 2]!,
      plainWeight: rows[at + 3]!,
      length: rows[at + 4]!,
      asks: ASKS[flags & (LITERAL - 1)]!,
      literal: (flags & LITERAL) !== 0,
      place: -1,
      without: rows[at + 6]!,
      byNumber: rows[at + 7]!,
    });
    at = end;
  }
  return responses;
}
