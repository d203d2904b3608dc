import { DECISIONS, type GroupMeasures } from "../../cohort/agreement/measures.ts";
import type { AgreementReport, Disagreement, PairReport, WordingNeed } from "../../cohort/agreement/report.ts";
import { FEW_TOTALS, type TotalsBasis } from "../../cohort/agreement/totals.ts";
import type { UnsafeReport } from "../../cohort/agreement/unsafe.ts";
import type { UnsafeMark } from "../../cohort/marks.ts";
import type { ListenAt } from "../../cohort/record.ts";
import type { Estimate } from "../../cohort/statistics/estimate.ts";
import { clock, number, percent, plural } from "../figures.ts";
import { faint, strong, type Page } from "../page.ts";
import { MARK_WORD } from "../style.ts";
import { briefly, estimate, INTERVAL_NOTE, share, unmeasured } from "./estimates.ts";
import { harmless } from "../harmless.ts";
import { readablePage, type Look } from "../page-of.ts";
import { rowsOf } from "./rows.ts";
import { table } from "./table.ts";

/** More than this scroll the figures away; the JSON form has them all. */
const MOST_DISAGREEMENTS = 30;
const MOST_WORDINGS = 10;
const row = rowsOf(26);

/** Agreement as a page of text. */
export function agreementText(report: AgreementReport, look: Look): string {
  const page = readablePage(look);
  const data = harmless(report, look.ascii);
  page.entry({ body: [strong("Agreement"), `: ${plural(data.rehearsals, "rehearsal")} of ${plural(data.candidates, "candidate")}, marked by ${data.tool} and ${listed(data.markers)}`] });
  if (data.blank > 0) page.entry({ body: faint(`${plural(data.blank, "line")} left blank: not marked.`) });
  for (const pair of data.overall.pairs) pairBlock(page, pair);
  if (data.overall.people !== null) groupBlock(page, "People among themselves", data.overall.people);
  groupBlock(page, `${data.tool} and all people`, data.overall.all);
  if (data.unsafe !== null) unsafe(page, data.unsafe);
  totals(page, data);
  ratings(page, data);
  items(page, data);
  wordings(page, data.wording, data.items.length > 0);
  disagreements(page, data.disagreements);
  page.blank();
  page.entry({ body: faint(`${INTERVAL_NOTE} Over all items the intervals come from drawing whole rehearsals, and there are none below 10 rehearsals. "Cannot tell", "not offered" and "n/a" are outside the figures and counted apart. Agreement, kappa, PABAK and AC1 are of four categories (${DECISIONS.join(", ")}), weighted kappa and ordinal alpha of credit (none, part, all); with four categories PABAK is (4 po - 1) / 3.`) });
  return page.toString();
}

function listed(names: readonly string[]): string {
  return names.length < 2 ? names.join("") : `${names.slice(0, -1).join(", ")} and ${names.at(-1)!}`;
}

/** Both depend on how many categories there are: said where they stand. */
const [PABAK, AC1] = [`PABAK, ${DECISIONS.length} categories`, `Gwet's AC1, ${DECISIONS.length} categories`];

function pairBlock(page: Page, { first, second, measures }: PairReport): void {
  page.heading(`${first} and ${second}`, plural(measures.n, "mark"));
  if (measures.undecided.first + measures.undecided.second > 0) row(page, "not decided", `${first} ${measures.undecided.first}, ${second} ${measures.undecided.second}`);
  row(page, "agreement", estimate(measures.percent, share));
  row(page, "Cohen's kappa", estimate(measures.kappa));
  row(page, "weighted kappa, linear", estimate(measures.linearKappa));
  row(page, "weighted kappa, quadratic", estimate(measures.quadraticKappa));
  row(page, PABAK, estimate(measures.pabak));
  row(page, AC1, estimate(measures.ac1));
  row(page, "Krippendorff's alpha", `nominal ${estimate(measures.alphaNominal)}; ordinal ${estimate(measures.alphaOrdinal)}`);
}

function groupBlock(page: Page, title: string, measures: GroupMeasures): void {
  page.heading(title, plural(measures.n, "mark"));
  row(page, "agreement of pairs", measures.percent === null ? "not measurable: nothing was marked by two or more" : share(measures.percent));
  row(page, "Fleiss' kappa", estimate(measures.fleiss));
  row(page, AC1, estimate(measures.ac1));
  row(page, "Krippendorff's alpha", `nominal ${estimate(measures.alphaNominal)}; ordinal ${estimate(measures.alphaOrdinal)}; interval ${estimate(measures.alphaInterval)}`);
}

const UNSAFE_WORD: Record<UnsafeMark, string> = { said: "said", cleared: "put right", absent: "absent", "cannot-tell": "cannot tell" };

function unsafe(page: Page, { pairs, disagreements: all }: UnsafeReport): void {
  page.heading("Unsafe statements");
  page.entry({ indent: 2, body: faint("Those of the rubric's list that stand at the end. Counted are those that both marked; what is left blank is not marked.") });
  for (const { first, second, n, rehearsals, both, firstOnly, secondOnly, firstBySecond, secondByFirst, kappa } of pairs) {
    if (n === 0) continue;
    page.entry({ indent: 2, body: [strong(`${first} and ${second}`), `: ${plural(n, "mark")} of ${plural(rehearsals, "rehearsal")}`] });
    const found = (by: string, other: string, count: number, figure: Estimate) => row(page, `  stand by ${by}`, `${count}${count === 0 ? "" : `; ${both} of them by ${other}, ${estimate(figure, share)}`}`);
    found(second, first, both + secondOnly, secondByFirst);
    found(first, second, both + firstOnly, firstBySecond);
    row(page, "  Cohen's kappa", estimate(kappa));
  }
  for (const { key, label, tool, people, at } of all.slice(0, MOST_DISAGREEMENTS)) {
    page.entry({ indent: 2, body: [strong(`${key.candidate}, ${key.station}, attempt ${key.attempt}`), `: ${label}`] });
    page.entry({ indent: 4, body: `${[`saidwell ${UNSAFE_WORD[tool]}`, ...people.map(({ marker, mark }) => `${marker} ${UNSAFE_WORD[mark]}`)].join(", ")}. ${at.length === 0 ? (tool === "absent" ? "Not found by the tool: listen for it." : "") : `Listen at ${[...new Set(at.map(place))].join(", ")}.`}` });
  }
  if (all.length > MOST_DISAGREEMENTS) page.entry({ indent: 2, body: faint(`and ${all.length - MOST_DISAGREEMENTS} more (all in --format json)`) });
}

const BASIS: Record<TotalsBasis, string> = {
  given: "as the markers gave them",
  "from marks": "worked out from marks",
};

function totals(page: Page, { totals: { basis, n, intraclass, limits } }: AgreementReport): void {
  page.heading("Totals in per cent");
  page.entry({ indent: 2, body: faint("Worked out from marks: in one way for all, from the items that those compared decided; partial counts half. As given: beside the tool's own total.") });
  page.entry({ indent: 2, body: [strong("All markers together"), `: ${plural(n, "rehearsal")}; ${BASIS[basis]}`] });
  const why = [...new Set(intraclass.map(({ figure }) => (figure.value === null ? figure.why : "")))];
  if (why.length === 1 && why[0] !== "") row(page, "  all six ICCs", `not measurable: ${why[0]!}`);
  else for (const { form, model, figure } of intraclass) row(page, `  ${form}`, `${estimate(figure)}: ${model}`);
  for (const { first, second, basis: own, n: both, limits: pair, correlation, intraclass: forms } of limits) {
    page.entry({ indent: 2, body: [strong(`${first} minus ${second}`), `: ${plural(both, "rehearsal")}; ${BASIS[own]}`] });
    if (unmeasured(pair)) {
      row(page, "  limits of agreement", `not measurable: ${pair.why}`);
      continue;
    }
    const points = (value: number) => number(value);
    row(page, "  mean difference", `${estimate(pair.bias, points)} points; standard deviation ${points(pair.standardDeviation)}`);
    row(page, "  limits of agreement", `${estimate(pair.lower, points)} and ${estimate(pair.upper, points)} points (Bland and Altman 1986)`);
    const absolute = forms.find(({ form }) => form === "ICC(2,1)")!;
    // Two markers in all: the same figure stands above.
    if (limits.length > 1) row(page, "  ICC(2,1)", `${estimate(absolute.figure)} (the other five in --format json)`);
    row(page, "  correlation", `${estimate(correlation)}${correlation.value === null ? "" : " (order only, not agreement)"}`);
  }
  if (limits.some(({ n: both, limits: pair }) => both < FEW_TOTALS && !unmeasured(pair))) page.entry({ indent: 2, body: faint(`Fewer than ${FEW_TOTALS} rehearsals: take limits and correlations as a hint only.`) });
}

function ratings(page: Page, { ratings: scales }: AgreementReport): void {
  for (const { what, n, pairs, alphaOrdinal, withTotal } of scales) {
    page.heading(what === "global" ? "Global ratings by people" : "Communication ratings by people", plural(n, "rehearsal"));
    for (const { first, second, quadraticKappa, absolute } of pairs) row(page, `${first} and ${second}`, `weighted kappa, quadratic ${estimate(quadraticKappa)}; ICC(2,1) ${estimate(absolute)}`);
    row(page, "Krippendorff's alpha", `ordinal ${estimate(alphaOrdinal)}`);
    row(page, "with the tool's total", `correlation ${estimate(withTotal)}`);
  }
}

function items(page: Page, { items: all, tool }: AgreementReport): void {
  for (const rubric of [...new Set(all.map((item) => item.rubric))]) {
    page.heading(`Items: ${rubric}`);
    const rows = all.filter((item) => item.rubric === rubric).flatMap((item) => item.pairs.filter(({ first }) => first === tool).map(({ second, measures }) => [
      `${item.label}${item.critical ? " CRITICAL" : ""} (${second})`,
      String(measures.n),
      briefly(measures.percent, share).replace(/ \(.*/, ""),
      briefly(measures.kappa).replace(/ \(.*/, ""),
      briefly(measures.ac1).replace(/ \(.*/, ""),
    ]).concat(item.people === null || item.people.n === 0 ? [] : [[
      `${item.label}${item.critical ? " CRITICAL" : ""} (people among themselves)`,
      String(item.people.n),
      item.people.percent === null ? "n.m." : share(item.people.percent),
      briefly(item.people.fleiss).replace(/ \(.*/, ""),
      briefly(item.people.ac1).replace(/ \(.*/, ""),
    ]]));
    table(page, [`item (marker beside ${tool})`, "n", "agree", "kappa", "AC1"], rows);
    page.entry({ indent: 2, body: faint("Kappa is Cohen's for two, Fleiss' for people among themselves. Intervals and all other figures of an item: --format json.") });
  }
}

function reason({ whose, people }: WordingNeed): string {
  if (whose === "people") return "people read it differently: say more exactly what earns it";
  if (whose === "both") return "people read it differently, and the tool differs from them";
  if (people.of === 0) return "no two people marked the same: its phrases find too little or too much, or that person reads it otherwise";
  return `${people.differ === 0 ? "people agree among themselves" : "people differ less from one another than the tool from them"}: its phrases find too little or too much`;
}

function wordings(page: Page, needs: readonly WordingNeed[], marked: boolean): void {
  page.heading("Items whose wording most needs work");
  if (needs.length === 0) page.entry({ indent: 2, body: marked ? "None: nobody differed." : "Not measurable: no item was marked." });
  needs.slice(0, MOST_WORDINGS).forEach((need, place) => {
    const { rubric, item, label, people, tool, elements } = need;
    page.entry({ indent: 2, lead: String(place + 1), hang: 4, body: [strong(label), faint(` (${rubric}: ${item})`)] });
    const differ = [people.of > 0 ? `people among themselves ${people.differ} of ${people.of}` : null, tool.of > 0 ? `tool and people ${tool.differ} of ${tool.of}` : null].filter((part) => part !== null);
    page.entry({ indent: 6, body: `differ: ${differ.join(", ")}; ${reason(need)}.` });
    for (const element of elements) page.entry({ indent: 6, body: `element "${element.label}": ${element.differ} of ${element.of}` });
  });
}

function disagreements(page: Page, all: readonly Disagreement[]): void {
  page.heading("Disagreements to listen to", plural(all.length, "item"));
  for (const { key, label, critical, tool, confidence, people, at } of all.slice(0, MOST_DISAGREEMENTS)) {
    page.entry({ indent: 2, body: [strong(`${key.candidate}, ${key.station}, attempt ${key.attempt}`), `: ${label}`, critical ? " CRITICAL" : ""] });
    const marks = [`saidwell ${MARK_WORD[tool]} (${percent(100 * confidence)} sure)`, ...people.map(({ marker, content }) => `${marker} ${MARK_WORD[content]}`)];
    page.entry({ indent: 4, body: `${marks.join(", ")}. ${at.length === 0 ? "Not found by the tool: listen for it." : `Listen at ${[...new Set(at.map(place))].join(", ")}.`}` });
  }
  if (all.length > MOST_DISAGREEMENTS) page.entry({ indent: 2, body: faint(`and ${all.length - MOST_DISAGREEMENTS} more (all in --format json)`) });
}

function place({ time, line, estimated }: ListenAt): string {
  return time === null ? `line ${line}` : `${estimated ? "~" : ""}${clock(time)}`;
}
