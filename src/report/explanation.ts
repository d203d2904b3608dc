import type { Explanation, ShownPassage } from "../mark.ts";
import type { Doubt } from "../matching/likelihood.ts";
import type { Gate } from "../matching/types.ts";
import type { ElementResult } from "../scoring/types.ts";
import { cleanDeep } from "./clean.ts";
import { percent } from "./figures.ts";
import { toJson } from "./json.ts";
import { faint, strong, styled, type Page } from "./page.ts";
import { pageOf, type Look } from "./page-of.ts";
import { MARK_STYLE, MARK_WORD } from "./style.ts";
import { spoken } from "./text/evidence.ts";
import { ELICITATION } from "./text/items.ts";

const GATE: Record<Gate, string> = {
  polarity: "it denies what the response says, or affirms what it denies",
  quantity: "the number that the rubric expects is not in it",
  "speech-act": "it asks where the item must be told, or tells where it must be asked",
  speaker: "somebody else said it",
  must: "words that the rubric requires are not in it",
  "not-with": "it holds words that mean something else by the rubric",
  "played-down": "it is told as nothing, normal or harmless, and must alarm",
  aside: "it tells of the speaker, or has the patient wait, and teaches nothing",
  faulted: "it is told as a fault or as harm",
  contradicted: "a wrong statement of the element says more with the same words",
  direction: "it goes another way than the response",
  rule: "what it tells is not told for the condition that it names",
  others: "it is told of people of another age",
  "look-alike": "its words fit another item better",
  "unsafe-words": "its words belong to an unsafe statement",
  turned: "what is said beside it most likely turns it",
  "sound-alike": "it hangs on words that may have been mis-heard",
};

const DOUBT: Record<Doubt, string> = {
  "nothing-else-of-its-item": "nothing else of its item is spoken of near by",
  "fits-another-element": "some of these words fit another element better",
  "fits-better-elsewhere": "the element fits better elsewhere",
  "few-words": "one word alone",
  "other-words-between": "more other words than its own in the stretch",
};

/** How an item was decided, as JSON or as text for a terminal. */
export function renderExplanation(explanation: Explanation, options: Look & { format: "text" | "json" }): string {
  if (options.format === "json") return toJson(explanation);
  const { item, elements, file, rubric } = cleanDeep(explanation);
  const page = pageOf(options);
  page.heading(item.label, item.critical ? "critical" : "");
  page.entry({ body: [faint(`${file}, rubric ${rubric}, item ${item.id}: `), styled(MARK_WORD[item.content], MARK_STYLE[item.content]), faint(`, ${percent(item.confidence * 100)} sure`)] });
  for (const element of elements) {
    page.blank();
    const judged = item.elements.find(({ id }) => id === element.id);
    const content = judged?.content ?? "absent";
    page.entry({ lead: styled(page.symbols.mark[content], MARK_STYLE[content]), hang: 2, body: [strong(element.label), faint(` (${element.id}): `), styled(MARK_WORD[content], MARK_STYLE[content])] });
    const byNoPassage = content !== "absent" && !element.passages.some(({ counts }) => counts);
    if (byNoPassage && judged !== undefined) decidedByMore(page, judged);
    else if (element.passages.length === 0) page.entry({ indent: 2, body: "No passage shares enough words with any acceptable response." });
    for (const passage of element.passages) onePassage(page, passage);
  }
  return page.toString();
}

/** What no passage of the candidate's alone says: a reply to the patient, or an unsafe statement that contradicts the element. */
function decidedByMore(page: Page, { evidence, reason, elicitation }: ElementResult): void {
  for (const place of evidence) page.entry({ indent: 2, lead: page.symbols.bullet, hang: 2, body: spoken(place, page.symbols) });
  const how = reason ?? (elicitation === null || elicitation === "offered" ? "read together with what stands around it" : ELICITATION[elicitation]);
  page.entry({ indent: 4, body: [strong("stands on the sheet"), `: ${how}`] });
}

function onePassage(page: Page, passage: ShownPassage): void {
  page.entry({ indent: 2, lead: page.symbols.bullet, hang: 2, body: spoken(passage.evidence, page.symbols) });
  const indent = 4;
  const verdict = passage.counts ? `counts as said ${passage.verdict === "right" ? "rightly" : passage.verdict}` : "does not count";
  page.entry({ indent, body: [strong(verdict), `: fit ${passage.score.toFixed(2)}${passage.needed === null ? `, ${percent((passage.likelihood ?? 0) * 100)} likely; from ${percent(passage.likely * 100)} it counts` : `, needed ${passage.needed.toFixed(2)}`}`, passage.reason === undefined ? "" : `; ${passage.reason}`] });
  page.entry({ indent, body: [faint("nearest response: "), passage.response] });
  page.entry({ indent, body: [faint("found: "), passage.aligned.map(({ term, words }) => (term === words.toLowerCase() ? term : `${term} (${words})`)).join(", ") || "nothing"] });
  if (passage.missing.length > 0) page.entry({ indent, body: [faint("not found: "), passage.missing.join(", ")] });
  if (passage.doubts.length > 0) page.entry({ indent, body: [faint("less likely because: "), passage.doubts.map((doubt) => DOUBT[doubt]).join("; ")] });
  for (const gate of passage.closed) page.entry({ indent, lead: styled("closed:", "doubt"), hang: 8, body: [GATE[gate], gate === "must" && passage.unmet.length > 0 ? `: ${passage.unmet.join("; ")}` : ""] });
}
