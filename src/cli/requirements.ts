import type { Measured, MarkSheet } from "../scoring/types.ts";
import { clock, number } from "../report/figures.ts";
import { problem } from "./problems.ts";
import { didYouMean } from "../problem/nearest.ts";

/** Null when it holds; else one clause that says why it does not, or why that cannot be measured. */
type Check = (sheet: MarkSheet, value: string) => string | null;

interface Kind {
  /** How it is written. */
  form: string;
  help: string;
  /** Absent: takes no value. Null for a value that will do, else what it should be. */
  value?: (value: string) => string | null;
  /** The value may be left away. */
  optional?: boolean;
  check: Check;
}

const labels = (statements: readonly { label: string }[]): string => [...new Set(statements.map(({ label }) => label))].join("; ");

const SEVERITIES = ["minor", "moderate", "major"] as const;

const KINDS: Record<string, Kind> = {
  pass: {
    form: "pass",
    help: "the result is a pass",
    check: ({ result }) => (result.outcome === "pass" ? null : `the result is ${result.outcome.replace("-", " ")}${because(result.reasons)}`),
  },
  decided: {
    form: "decided",
    help: "the result is a pass or a fail, nothing left to listen to that could change it",
    check: ({ result }) => (result.outcome === "pass" || result.outcome === "fail" ? null : `the result is ${result.outcome.replace("-", " ")}${because(result.reasons)}`),
  },
  critical: {
    form: "critical",
    help: "every critical item is met",
    check: ({ critical, items }) => {
      const named = (ids: string[]) => ids.map((id) => items.find((item) => item.id === id)?.label ?? id).join("; ");
      if (critical.missed.length > 0) return `${critical.met} of ${critical.total} are met; missed: ${named(critical.missed)}`;
      return critical.unsure.length > 0 ? `it cannot be told of: ${named(critical.unsure)}` : null;
    },
  },
  "no-unsafe": {
    form: "no-unsafe[=SEVERITY]",
    help: "no unsafe statement stands at the end, of that severity (minor, moderate, major) or worse",
    value: (value) => ((SEVERITIES as readonly string[]).includes(value) ? null : `one of ${SEVERITIES.join(", ")}`),
    optional: true,
    check: ({ unsafe }, value) => {
      const least = SEVERITIES.indexOf((value === "" ? "minor" : value) as (typeof SEVERITIES)[number]);
      const found = unsafe.found.filter((statement) => !statement.corrected && SEVERITIES.indexOf(statement.severity) >= least);
      const standing = found.filter(({ listen }) => !listen);
      if (standing.length > 0) return `found: ${labels(standing)}`;
      return found.length > 0 ? `somebody must listen first: ${labels(found)}` : null;
    },
  },
  "no-incorrect": {
    form: "no-incorrect",
    help: "nothing stated wrongly stands at the end",
    check: ({ incorrect }) => {
      const standing = incorrect.filter(({ corrected }) => !corrected);
      return standing.length === 0 ? null : `stated wrongly: ${standing.map(({ label }) => label).join("; ")}`;
    },
  },
  coverage: {
    form: "coverage=PERCENT",
    help: "at least so much of the marks that count, even if what cannot be told turns out missing",
    value: (value) => (/^\d{1,3}(\.\d+)?$/.test(value) && Number(value) <= 100 ? null : "a number from 0 to 100"),
    check: coverage,
  },
  item: {
    form: "item=ID",
    help: "the item of that id is met",
    value: (value) => (value === "" ? "the id of an item" : null),
    check: ({ items }, id) => {
      const item = items.find((candidate) => candidate.id === id);
      if (item === undefined) {
        const ids = items.map((candidate) => candidate.id);
        throw problem("SW-U04", `--require item=${id}`, `the rubric has no item '${id}'`, `${didYouMean(id, ids)}Its items are: ${ids.join(", ")}.`);
      }
      return item.met ? null : `${item.label}: ${item.content.replace("-", " ")}`;
    },
  },
  order: {
    form: "order",
    help: "no pair of items that must keep its order was broken",
    check: ({ order }) => (order.broken.length === 0 ? null : `${order.broken.length} broken: ${order.broken.map(({ first, then }) => `${first} before ${then}`).join("; ")}`),
  },
  questions: {
    form: "questions",
    help: "every question that the patient asked was answered",
    check: ({ questions }) => {
      const open = questions.filter(({ answer }) => answer !== "answered" && answer !== "not-asked");
      return open.length === 0 ? null : open.map(({ label, answer }) => `'${label}' ${answer.replace("-", " ")}`).join("; ");
    },
  },
  "within-limit": {
    form: "within-limit",
    help: "the station ended within the time limit",
    check: ({ time }) => within(time.overLimit, "limit", time.limit),
  },
  "within-target": {
    form: "within-target",
    help: "the station ended within the target time",
    check: ({ time }) => within(time.overTarget, "target", time.target),
  },
};

export const REQUIREMENTS: readonly { name: string; form: string; help: string }[] = Object.entries(KINDS).map(([name, { form, help }]) => ({ name, form, help }));

export interface Requirement {
  name: string;
  /** Empty when it takes none. */
  value: string;
}

/** @param typed comma lists, as given to --require one or more times. @throws ProblemError SW-U04 */
export function parseRequirements(typed: readonly string[]): Requirement[] {
  const written = typed.flatMap((list) => list.split(",")).map((part) => part.trim());
  return written.map((part) => {
    const [name = "", ...rest] = part.split("=");
    const value = rest.join("=").trim();
    const kind = Object.hasOwn(KINDS, name) ? KINDS[name] : undefined;
    const where = `--require ${part}`;
    if (kind === undefined) {
      const names = Object.keys(KINDS);
      throw problem("SW-U04", where, part === "" ? "a requirement is empty" : `there is no requirement '${name}'`, `${didYouMean(name, names)}There are: ${REQUIREMENTS.map(({ form }) => form).join(", ")}.`);
    }
    if (kind.value === undefined && rest.length > 0) throw problem("SW-U04", where, `'${name}' takes no value`, `Write ${kind.form}.`);
    if (kind.value !== undefined && !(kind.optional === true && rest.length === 0)) {
      const wanted = kind.value(value);
      if (wanted !== null) throw problem("SW-U04", where, `'${name}' needs ${wanted}`, `Write ${kind.form}.`);
    }
    return { name, value };
  });
}

/** The requirements that do not hold or cannot be measured, each with the reason. */
export function unmet(sheet: MarkSheet, requirements: readonly Requirement[]): { requirement: string; why: string }[] {
  return requirements.flatMap(({ name, value }) => {
    const why = KINDS[name]!.check(sheet, value);
    return why === null ? [] : [{ requirement: value === "" ? name : `${name}=${value}`, why }];
  });
}

function because(reasons: string[]): string {
  return reasons.length === 0 ? "" : `: ${reasons.join("; ")}`;
}

/** Coverage can still move while items cannot be told; the requirement holds only if it holds at the worst. */
function coverage({ total, items }: MarkSheet, value: string): string | null {
  const wanted = Number(value);
  if (total.percent === null) return "not measurable: no item counts";
  if (total.percent < wanted) return `the coverage is ${number(total.percent)}%`;
  const open = items.filter(({ content }) => content === "cannot-tell").reduce((sum, { weight }) => sum + weight, 0);
  const worst = (100 * total.earned) / (total.available + open);
  return worst >= wanted ? null : `the coverage is ${number(total.percent)}%, but ${number(worst)}% if the items that cannot be told were missed: somebody must listen first`;
}

function within(over: Measured<number>, name: string, allowed: number): string | null {
  if (over.value === null) return `not measurable: ${(over as { why: string }).why}`;
  return over.value <= 0 ? null : `${clock(over.value)} over the ${name} of ${clock(allowed)}`;
}
