import { SoundIndex } from "../language/sound.ts";
import type { CompiledElement, CompiledRubric, CompiledStatement, Response, Term } from "./compile.ts";

/*
 * A compiled rubric as plain data. Compiling takes longer than marking, so the build does it for the shipped rubrics.
 * Terms are listed once: the responses of a rubric use the same few hundred over and over.
 */

type PackedResponse = Omit<Response, "terms"> & { terms: number[] };
type PackedElement = Omit<CompiledElement, "say" | "incorrect" | "elsewhere" | "anchors" | "vocabulary"> & {
  say: PackedResponse[];
  incorrect: PackedResponse[];
  elsewhere: { responses: PackedResponse[]; quantity: CompiledElement["quantity"]; note: string }[];
  anchors: string[];
  vocabulary: string[];
};

export interface PackedRubric {
  terms: Term[];
  elements: PackedElement[];
  unsafe: (Omit<CompiledStatement, "say"> & { say: PackedResponse[] })[];
  questions: (Omit<CompiledRubric["questions"][number], "says" | "answer" | "incorrect"> & Record<"says" | "answer" | "incorrect", PackedResponse[]>)[];
  cues: { item: string; says: PackedResponse[] }[];
  vocabulary: string[];
  devices: number[];
}

export function packRubric(rubric: CompiledRubric): PackedRubric {
  const terms: Term[] = [];
  const places = new Map<string, number>();
  const place = (term: Term): number => {
    const key = JSON.stringify(term);
    let known = places.get(key);
    if (known === undefined) {
      known = terms.push(term) - 1;
      places.set(key, known);
    }
    return known;
  };
  const pack = (responses: readonly Response[]): PackedResponse[] => responses.map((response) => ({ ...response, terms: response.terms.map(place) }));
  return {
    terms,
    elements: rubric.elements.map((element) => ({
      ...element,
      say: pack(element.say),
      incorrect: pack(element.incorrect),
      elsewhere: element.elsewhere.map((other) => ({ ...other, responses: pack(other.responses) })),
      anchors: [...element.anchors],
      vocabulary: [...element.vocabulary],
    })),
    unsafe: rubric.unsafe.map((statement) => ({ ...statement, say: pack(statement.say) })),
    questions: rubric.questions.map((question) => ({ ...question, says: pack(question.says), answer: pack(question.answer), incorrect: pack(question.incorrect) })),
    cues: rubric.cues.map((cue) => ({ ...cue, says: pack(cue.says) })),
    vocabulary: [...rubric.vocabulary],
    devices: [...rubric.devices],
  };
}

export function unpackRubric(packed: PackedRubric): CompiledRubric {
  const unpack = (responses: readonly PackedResponse[]): Response[] => responses.map((response) => ({ ...response, terms: response.terms.map((term) => packed.terms[term]!) }));
  const vocabulary = new Set(packed.vocabulary);
  return {
    elements: packed.elements.map((element) => ({
      ...element,
      say: unpack(element.say),
      incorrect: unpack(element.incorrect),
      elsewhere: element.elsewhere.map((other) => ({ ...other, responses: unpack(other.responses) })),
      anchors: new Set(element.anchors),
      vocabulary: new Set(element.vocabulary),
    })),
    unsafe: packed.unsafe.map((statement) => ({ ...statement, say: unpack(statement.say) })),
    questions: packed.questions.map((question) => ({ ...question, says: unpack(question.says), answer: unpack(question.answer), incorrect: unpack(question.incorrect) })),
    cues: packed.cues.map((cue) => ({ ...cue, says: unpack(cue.says) })),
    sounds: new SoundIndex(vocabulary),
    vocabulary,
    devices: new Set(packed.devices),
  };
}
