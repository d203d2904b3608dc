import { compiledRubric, VERSION } from "../mark.ts";
import { matchStation } from "../matching/match.ts";
import type { Rubric } from "../rubric/schema.ts";
import { scoreStation } from "../scoring/sheet.ts";
import type { Content, ItemResult, MarkSheet, Outcome } from "../scoring/types.ts";
import { findStation } from "../station/find.ts";
import type { Station } from "../station/types.ts";
import type { Transcript } from "../transcript/types.ts";
import { changesBetween, type RubricChange } from "./changes.ts";
import { withChange } from "./one-change.ts";
import { itemOf } from "./parts.ts";

/** What the comparison says of one version. */
export interface VersionName {
  id: string;
  title: string;
  version: number;
  hash: string;
  file: string;
}

export interface ItemMark {
  content: Content;
  earned: number;
  weight: number;
  critical: boolean;
  met: boolean;
}

/**
 * Why something changed. `alone`: each of the changes brings it about by itself, tried by marking with the old rubric
 * and that one change. `together`: none does by itself, but all changes to this part do, tried the same way.
 * `elsewhere`: a change to another part does it by itself, as when its words are now taken for another item. `mixed`:
 * only changes to several parts do. `untried`: more changes than are tried one by one.
 */
export interface Cause {
  how: "alone" | "together" | "elsewhere" | "mixed" | "untried";
  /** Places in `RubricComparison.changes`. */
  changes: number[];
}

export interface ItemChange {
  id: string;
  label: string;
  /** Null: the version has no such item. */
  before: ItemMark | null;
  after: ItemMark | null;
  /** Elements that are earned, or said wrongly, in one version and not in the other. */
  elements: { id: string; before: string | null; after: string | null }[];
  why: Cause;
}

/** An unsafe statement or a question of the patient that is found, or answered, in another way. */
export interface FindingChange {
  kind: "unsafe" | "question";
  id: string;
  before: string;
  after: string;
  why: Cause;
}

export interface ResultOf {
  outcome: Outcome;
  percent: number | null;
  earned: number;
  available: number;
  reasons: string[];
}

export interface CandidateChange {
  file: string;
  before: ResultOf;
  after: ResultOf;
  items: ItemChange[];
  found: FindingChange[];
  /** Why the outcome changed beyond what the items say: the pass rule, the time. Null when it did not. */
  outcome: Cause | null;
}

export interface RubricComparison {
  form: "saidwell/rubric-comparison@1";
  version: string;
  before: VersionName;
  after: VersionName;
  changes: RubricChange[];
  transcripts: number;
  /** Those of whom anything changes, in the order given. */
  changed: CandidateChange[];
  /** Transcripts that could not be marked. */
  failed: { file: string; code: string; message: string }[];
  /** Whether something that marks depend on was edited under the same version number. */
  versionKept: boolean;
}

/** A rubric of 25 items edited from end to end; beyond this the list of causes helps nobody and costs a marking each. */
export const MAX_TRIED = 40;

/** Marks with both versions of a rubric and tells what differs and why. Pure; keeps what it compiled. */
export class RubricComparer {
  readonly changes: RubricChange[];
  private readonly before: Rubric;
  private readonly after: Rubric;
  private readonly tried = new Map<string, Rubric>();

  constructor(before: Rubric, after: Rubric) {
    this.before = before;
    this.after = after;
    this.changes = changesBetween(before, after);
  }

  /**
   * @returns null when nothing of this candidate's marks changes
   * @throws ProblemError as `mark`
   */
  compare(transcript: Transcript): CandidateChange | null {
    const station = findStation(transcript);
    const [old, fresh] = [sheetOf(station, this.before), sheetOf(station, this.after)];
    const tries = this.trial(station);
    const items = this.items(old, fresh, tries);
    const found = this.found(old, fresh, tries);
    const outcomeChanged = old.result.outcome !== fresh.result.outcome;
    if (items.length === 0 && found.length === 0 && !outcomeChanged && same(old.total, fresh.total)) return null;
    return {
      file: transcript.file,
      before: resultOf(old),
      after: resultOf(fresh),
      items,
      found,
      outcome: outcomeChanged ? this.cause(tries, ({ kind }) => kind === "pass" || kind === "time", (sheet) => sheet.result.outcome === fresh.result.outcome) : null,
    };
  }

  /** @param changed what `compare` gave, nulls left out */
  report(transcripts: number, changed: CandidateChange[], failed: RubricComparison["failed"]): RubricComparison {
    const { before, after, changes } = this;
    const versionKept = before.id === after.id && before.version === after.version && changes.some(({ marks }) => marks);
    return { form: "saidwell/rubric-comparison@1", version: VERSION, before: nameOf(before), after: nameOf(after), changes, transcripts, changed, failed, versionKept };
  }

  private items(old: MarkSheet, fresh: MarkSheet, tries: Tries): ItemChange[] {
    const ids = [...new Set([...fresh.items, ...old.items].map(({ id }) => id))];
    return ids.flatMap((id): ItemChange[] => {
      const [was, is] = [old.items, fresh.items].map((list) => list.find((item) => item.id === id));
      const [before, after] = [was && markOf(was), is && markOf(is)];
      const elements = elementChanges(was, is);
      if (same(before, after) && elements.length === 0) return [];
      const own = (change: RubricChange) => change.item === id || this.labelled(change, id);
      const holds = (sheet: MarkSheet) => {
        const now = sheet.items.find((item) => item.id === id);
        return same(now && markOf(now), after) && elementChanges(now, is).length === 0;
      };
      return [{ id, label: (is ?? was)!.label, before: before ?? null, after: after ?? null, elements, why: this.cause(tries, own, holds) }];
    });
  }

  private found(old: MarkSheet, fresh: MarkSheet, tries: Tries): FindingChange[] {
    const kinds = { unsafe: unsafeOf, question: questionsOf } as const;
    return (Object.keys(kinds) as (keyof typeof kinds)[]).flatMap((kind) => {
      const [was, is] = [kinds[kind](old), kinds[kind](fresh)];
      return [...new Set([...was.keys(), ...is.keys()])].flatMap((id): FindingChange[] => {
        const [before, after] = [was.get(id) ?? ABSENT[kind], is.get(id) ?? ABSENT[kind]];
        if (before === after) return [];
        const why = this.cause(tries, (change) => change.kind === kind && change.id === id, (sheet) => (kinds[kind](sheet).get(id) ?? ABSENT[kind]) === after);
        return [{ kind, id, before, after, why }];
      });
    });
  }

  /** An item changes with the entry of the label that one of its elements takes its number from. */
  private labelled(change: RubricChange, id: string): boolean {
    return change.kind === "label" && itemOf(this.after, id)?.elements.some(({ quantity }) => quantity !== undefined && "label" in quantity && quantity.label === change.id) === true;
  }

  /**
   * @param own which changes are to the very thing; they are tried first
   * @param holds whether a sheet has the new mark
   */
  private cause(tries: Tries, own: (change: RubricChange) => boolean, holds: (sheet: MarkSheet) => boolean): Cause {
    const all = this.changes.flatMap((change, place) => (change.marks ? [place] : []));
    const near = all.filter((place) => own(this.changes[place]!));
    if (all.length > MAX_TRIED) return { how: "untried", changes: near.length > 0 ? near : all };
    const by = near.filter((place) => holds(tries(place)));
    if (by.length > 0) return { how: "alone", changes: by };
    if (near.length > 1 && holds(tries(...near))) return { how: "together", changes: near };
    const far = all.filter((place) => !near.includes(place) && holds(tries(place)));
    if (far.length > 0) return { how: "elsewhere", changes: far };
    return { how: "mixed", changes: near.length > 0 ? near : all };
  }

  /** Marks with the old rubric and some changes, each choice once a station and only when asked. */
  private trial(station: Station): Tries {
    const sheets = new Map<string, MarkSheet>();
    return (...places) => {
      const key = places.join(" ");
      let sheet = sheets.get(key);
      if (sheet === undefined) sheets.set(key, (sheet = sheetOf(station, this.rubricWith(key, places))));
      return sheet;
    };
  }

  private rubricWith(key: string, places: readonly number[]): Rubric {
    let rubric = this.tried.get(key);
    if (rubric === undefined) this.tried.set(key, (rubric = places.reduce((before, place) => withChange(before, this.after, this.changes[place]!), this.before)));
    return rubric;
  }
}

type Tries = (...places: number[]) => MarkSheet;

const ABSENT = { unsafe: "not found", question: "not scripted" } as const;

function sheetOf(station: Station, rubric: Rubric): MarkSheet {
  return scoreStation(station, rubric, matchStation(station, compiledRubric(rubric)), { version: VERSION });
}

function unsafeOf({ unsafe }: MarkSheet): Map<string, string> {
  // Of several places of one statement the one that stands tells.
  const serious = ({ corrected, listen }: (typeof unsafe.found)[number]) => (corrected ? 0 : listen ? 1 : 2);
  return new Map([...unsafe.found].sort((a, b) => serious(a) - serious(b)).map(({ id, severity, corrected, listen }) => [id, `${severity}${corrected ? ", put right" : ""}${listen ? ", to be listened to" : ""}`]));
}

function questionsOf({ questions }: MarkSheet): Map<string, string> {
  return new Map(questions.filter(({ scripted }) => scripted).map(({ id, answer }) => [id, answer]));
}

function markOf({ content, earned, weight, critical, met }: ItemResult): ItemMark {
  return { content, earned, weight, critical, met };
}

function elementChanges(was: ItemResult | undefined, is: ItemResult | undefined): ItemChange["elements"] {
  if (was === undefined || is === undefined) return [];
  const ids = [...new Set([...is.elements, ...was.elements].map(({ id }) => id))];
  return ids.flatMap((id) => {
    const [before, after] = [was, is].map(({ elements }) => elements.find((element) => element.id === id)?.content ?? null);
    // An element that one version lacks and that nobody said in the other changes nothing by itself.
    return (before ?? "absent") === (after ?? "absent") ? [] : [{ id, before: before!, after: after! }];
  });
}

function resultOf({ result, total }: MarkSheet): ResultOf {
  return { outcome: result.outcome, percent: total.percent, earned: total.earned, available: total.available, reasons: result.reasons };
}

function nameOf({ id, title, version, hash, file }: Rubric): VersionName {
  return { id, title, version, hash, file };
}

function same(one: unknown, other: unknown): boolean {
  return JSON.stringify(one) === JSON.stringify(other);
}
