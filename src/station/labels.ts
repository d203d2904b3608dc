import { ProblemError, type Finding } from "../problem/problem.ts";
import type { Transcript } from "../transcript/types.ts";
import { marginals, type ChainScores } from "./chain.ts";
import { rolesByName } from "./label-names.ts";
import type { Token } from "./token.ts";
import type { Role, Station, StationOptions } from "./types.ts";

export interface LabelRole {
  label: string;
  role: Role;
  confidence: number;
  /** A person said so: by option, or in a corrected label file. */
  told: boolean;
  /** Several voices speak under it: the model decides word by word. */
  mixed: boolean;
}

export interface LabelInput {
  transcript: Transcript;
  tokens: readonly Token[];
  /** Label of every token. */
  labels: readonly (string | null)[];
  /** 1 where a token belongs to an announcement by its wording. */
  announced: Uint8Array;
  /** 1 where a token belongs to talk around a station: set-up, the clock, questions and feedback after it. */
  around: Uint8Array;
  /** The other tokens, in order, and the model's scores over them. */
  spoken: readonly number[];
  scores: ChainScores;
  options: StationOptions;
}

export interface LabelMapping {
  labels: LabelRole[];
  source: Station["roleSource"];
  findings: Finding[];
}

/** Belief in a role that a telling name gives ("Patient"). */
const NAMED = 0.98;
/** More labels than this are not tried in every combination; the rarest go one by one. */
const TRIED_TOGETHER = 8;
/** The words of a label back each other up, so their scores are not independent: one word in so many counts. A guess that keeps a label of one short reply unsure; full length consultations are sure either way. */
const DEPENDENT_WORDS = 5;
/** A word speaks against its label when the model gives the other role at least this. */
const AGAINST = 0.9;
/** Share of a label's words that must speak against it before it counts as mixing voices: with true labels of primock57 and aci-bench it stays below (see tests/bench/results/roles.md). */
const MIXED_SHARE = 0.3;
/** With so few words under a label one sentence of small talk is a third of them. */
const MIXED_LEAST_WORDS = 100;
/** With so little speech under the only label there is hardly a second voice. */
const ALONE_LEAST_WORDS = 40;
/** One label over all speech is no label when the other voice has at least this share. */
const SECOND_VOICE_SHARE = 0.08;
/** A label is an announcer's when this share of its words is announcements. */
const ANNOUNCER_SHARE = 0.5;

/** Who is silent for so much of the talk, and speaks of set-up, clock or feedback before or after, is an examiner. */
const SILENT_SHARE = 0.75;
/** Belief in that. */
const AROUND = 0.85;

const other = (role: Role): Role => (role === "candidate" ? "patient" : "candidate");

export function mapLabels(input: LabelInput): LabelMapping {
  const { transcript, labels, options } = input;
  const names = [...new Set(labels.filter((label) => label !== null))];
  const findings: Finding[] = [];
  if (options.candidate !== undefined && !names.some((name) => same(name, options.candidate!))) {
    const have = names.length === 0 ? "it has no labels" : `its labels are ${names.map((name) => `"${name}"`).join(", ")}`;
    throw new ProblemError([
      { code: "SW-S04", severity: "error", file: transcript.file, message: `no speech is labelled "${options.candidate}": ${have}`, mend: names.length === 0 ? "leave the option out; roles are then found from what is said" : "name one of these labels" },
    ]);
  }
  if (names.length === 0) return { labels: [], source: "model", findings };

  const corrected = transcript.segments.some((segment) => segment.inStation !== undefined);
  const byName = rolesByName(names);
  const roles = new Map<string, LabelRole>();
  for (const label of names) {
    const told = options.candidate !== undefined && same(label, options.candidate);
    const named = byName.get(label);
    if (told) roles.set(label, { label, role: "candidate", confidence: 1, told: true, mixed: false });
    else if (named !== undefined && (named !== "unknown" || corrected) && !(options.candidate !== undefined && named === "candidate"))
      roles.set(label, { label, role: named, confidence: corrected ? 1 : NAMED, told: corrected, mixed: false });
    else if (isAnnouncer(input, label)) roles.set(label, { label, role: "announcer", confidence: 0.9, told: false, mixed: false });
    else if (named === undefined && names.length > 2 && speaksAround(input, label)) roles.set(label, { label, role: "examiner", confidence: AROUND, told: false, mixed: false });
  }
  if (!corrected && aloneWithTwoVoices(input, names)) {
    findings.push({ code: "SW-S05", severity: "warning", file: transcript.file, message: `all speech stands under the label "${names[0]}", but two people speak; roles were found from what is said instead`, mend: "check the roles with `saidwell label`" });
    return { labels: [{ label: names[0]!, role: "unknown", confidence: 0, told: false, mixed: true }], source: "model", findings };
  }
  bySpeech(input, names, roles);
  if (!corrected) checkAgainstSpeech(input, roles, findings);
  const all = names.map((name) => roles.get(name)!);
  const partly = labels.some((label) => label === null) || all.some((each) => each.mixed);
  const source = partly ? "mixed" : all.every((each) => each.told) || options.candidate !== undefined ? "told" : "labels";
  return { labels: all, source, findings };
}

function same(a: string, b: string): boolean {
  return a.trim().toLowerCase() === b.trim().toLowerCase();
}

function isAnnouncer({ labels, announced }: LabelInput, label: string): boolean {
  let all = 0;
  let official = 0;
  labels.forEach((each, at) => {
    if (each !== label) return;
    all++;
    official += announced[at]!;
  });
  return official > all * ANNOUNCER_SHARE;
}

/** A name of its own that is heard only before and after two other people's long talk, and speaks there as an examiner does. */
function speaksAround({ labels, around }: LabelInput, label: string): boolean {
  const said = labels.flatMap((each, at) => (each === label ? [at] : []));
  if (!said.some((at) => around[at] === 1)) return false;
  const edges = [-1, ...said, labels.length];
  const gap = edges.slice(1).reduce((widest, end, place) => (end - edges[place]! > widest.end - widest.first ? { first: edges[place]!, end } : widest), { first: 0, end: 0 });
  return gap.end - gap.first - 1 >= labels.length * SILENT_SHARE && new Set(labels.slice(gap.first + 1, gap.end)).size > 1;
}

function aloneWithTwoVoices({ labels, spoken, scores }: LabelInput, names: readonly string[]): boolean {
  if (names.length !== 1 || labels.some((label) => label === null) || spoken.length < ALONE_LEAST_WORDS) return false;
  const { candidate } = marginals(scores);
  const sure = candidate.reduce((sum, p) => sum + (p > AGAINST ? 1 : 0), 0) / spoken.length;
  const against = candidate.reduce((sum, p) => sum + (p < 1 - AGAINST ? 1 : 0), 0) / spoken.length;
  return Math.min(sure, against) >= SECOND_VOICE_SHARE;
}

/** Labels whose names tell nothing get the roles that make the whole conversation likeliest. */
function bySpeech(input: LabelInput, names: readonly string[], roles: Map<string, LabelRole>): void {
  const sizes = new Map(names.map((name) => [name, input.labels.filter((label) => label === name).length]));
  const open = names.filter((name) => !roles.has(name)).sort((a, b) => sizes.get(b)! - sizes.get(a)!);
  if (open.length === 0) return;
  const together = open.slice(0, TRIED_TOGETHER);
  const told = input.options.candidate !== undefined;
  const haveCandidate = [...roles.values()].some((each) => each.role === "candidate");
  const havePatient = [...roles.values()].some((each) => each.role === "patient");
  const totals: { bits: number; score: number }[] = [];
  for (let bits = 0; bits < 1 << together.length; bits++) {
    const patients = together.filter((_, at) => bits & (1 << at)).length;
    // Someone must be the candidate, and of several labels one the patient.
    if (told ? patients < together.length : patients === together.length && !haveCandidate && names.length > 1) continue;
    if (patients === 0 && !havePatient && together.length > 1) continue;
    const assigned = new Map<string, Role>([...roles].map(([label, each]) => [label, each.role]));
    together.forEach((label, at) => assigned.set(label, bits & (1 << at) ? "patient" : "candidate"));
    totals.push({ bits, score: scoreOf(input, assigned) / DEPENDENT_WORDS });
  }
  const top = Math.max(...totals.map((each) => each.score));
  const sum = totals.reduce((all, each) => all + Math.exp(each.score - top), 0);
  const best = totals.find((each) => each.score === top)!;
  together.forEach((label, at) => {
    const bit = best.bits & (1 << at);
    const share = totals.filter((each) => (each.bits & (1 << at)) === bit).reduce((all, each) => all + Math.exp(each.score - top), 0) / sum;
    roles.set(label, { label, role: bit ? "patient" : "candidate", confidence: Math.min(0.99, share), told: false, mixed: false });
  });
  for (const label of open.slice(TRIED_TOGETHER)) {
    const score = input.spoken.reduce((all, at, place) => all + (input.labels[at] === label ? input.scores.emission[place]! : 0), 0) / DEPENDENT_WORDS;
    const candidate = 1 / (1 + Math.exp(-score));
    const role = told || candidate < 0.5 ? "patient" : "candidate";
    roles.set(label, { label, role, confidence: Math.max(candidate, 1 - candidate), told: false, mixed: false });
  }
}

function scoreOf({ spoken, labels, scores }: LabelInput, assigned: ReadonlyMap<string, Role>): number {
  let total = 0;
  let before: Role | undefined;
  spoken.forEach((at, place) => {
    const label = labels[at];
    const role = label === null || label === undefined ? undefined : assigned.get(label);
    if (role === "candidate") total += scores.emission[place]!;
    if (before === "candidate" && role === "patient") total += scores.toPatient[place]!;
    if (before === "patient" && role === "candidate") total += scores.toCandidate[place]!;
    before = role;
  });
  return total;
}

/** Finds labels whose speech is not that of their role: mixed voices, or names the wrong way round. */
function checkAgainstSpeech(input: LabelInput, roles: Map<string, LabelRole>, findings: Finding[]): void {
  const { candidate } = marginals(input.scores);
  for (const each of roles.values()) {
    if (each.role !== "candidate" && each.role !== "patient") continue;
    let words = 0;
    let against = 0;
    let lean = 0;
    input.spoken.forEach((at, place) => {
      if (input.labels[at] !== each.label) return;
      const belief = each.role === "candidate" ? candidate[place]! : 1 - candidate[place]!;
      words++;
      lean += belief;
      if (belief < 1 - AGAINST) against++;
    });
    if (words < MIXED_LEAST_WORDS || against < words * MIXED_SHARE) continue;
    const file = input.transcript.file;
    if (lean < words * 0.3) {
      findings.push({ code: "SW-S06", severity: "warning", file, message: `the speech under "${each.label}" reads like the ${other(each.role)}'s, but it was taken as the ${each.role}'s by its name`, mend: "name the candidate's label with --candidate" });
      each.confidence = Math.min(each.confidence, 0.6);
    } else if (!each.told) {
      each.mixed = true;
      each.confidence = Math.min(each.confidence, 0.5);
      findings.push({ code: "SW-S05", severity: "warning", file, message: `the label "${each.label}" seems to mix several voices; its sentences were given roles one by one`, mend: "check the roles with `saidwell label`" });
    }
  }
}
