import { createHash } from "node:crypto";
import { nearOrAll } from "../problem/nearest.ts";
import { ProblemError, Unreadable, type Finding } from "../problem/problem.ts";
import type { PositionedYaml } from "./positioned-yaml.ts";
import { findingsOf } from "./form-faults.ts";
import { readYaml } from "./positions.ts";
import { blockSchema, itemSchema, rubricSchema, SHORT_FORM, type Item, type Learnt, type Rubric, type RubricFile, type Section, type UnsafeStatement } from "./schema.ts";
import { itemsOf } from "./items.ts";
import { RubricPlaces, type IncludedBlock } from "./places.ts";
import type { Additions } from "./additions.ts";
import { readLearnt } from "./learnt.ts";
import { statementKey } from "./learnt-keys.ts";
import { danglingResponses, responsesSchema, withResponses, withStatements, type ResponsesFile } from "./responses.ts";
import { checkReferences } from "./references.ts";

export interface LoadOptions {
  /** As the person named it, for messages and the sheet. */
  file: string;
  /**
   * Gives the text of a block or responses file, its path as seen from the rubric. Decides itself which folders may be read.
   * @throws Error with a sentence when it cannot.
   */
  readBlock: (include: string) => string;
  /** What the file of an include is called in messages; absent, as it is written in the rubric. */
  blockFile?: (include: string) => string;
  /** Whether an include is part of the program, and no file that the person could mend. Absent: none is. */
  foreign?: (include: string) => boolean;
}

/** A rubric and where each part of it is written. */
export interface PlacedRubric {
  rubric: Rubric;
  places: RubricPlaces;
}

/**
 * Reads a rubric and the blocks it includes.
 * @param text the YAML of the rubric.
 * @throws ProblemError with every fault found: file, line, column and how to mend it.
 */
export function loadRubric(text: string, options: LoadOptions): Rubric {
  return loadPlacedRubric(text, options).rubric;
}

/** The same, and keeps where everything is written. @throws ProblemError as `loadRubric` */
export function loadPlacedRubric(text: string, options: LoadOptions): PlacedRubric {
  const main = readYaml(text, options.file);
  refuse(main.findings);
  const parsed = rubricSchema.safeParse(main.data);
  if (!parsed.success) refuse(findingsOf(parsed.error, main, rubricSchema));
  const blocks: IncludedBlock[] = [];
  const additions: Additions = new Map();
  const rubric = assemble(parsed.data!, main, options, blocks, additions);
  const places = new RubricPlaces(main, blocks, additions);
  refuse(checkReferences(rubric, places));
  return { rubric: { ...rubric, hash: hashOf(rubric) }, places };
}

/** SHA-256 over the resolved rubric: what a sheet was marked by, whatever its file is called. */
function hashOf(rubric: Omit<Rubric, "hash">): string {
  return createHash("sha256").update(JSON.stringify({ ...rubric, file: undefined })).digest("hex");
}

function refuse(findings: Finding[]): void {
  if (findings.length > 0) throw new ProblemError(findings);
}

function assemble({ responses, learnt, ...file }: RubricFile, main: PositionedYaml, options: LoadOptions, blocks: IncludedBlock[], additions: Additions): Omit<Rubric, "hash"> {
  const sections: Section[] = [];
  let sources = file.sources;
  const unsafe = [...file.unsafe];
  for (const [index, entry] of file.sections.entries()) {
    if ("items" in entry) {
      sections.push(entry);
      continue;
    }
    const block = readBlockFile(entry.include, index, main, options, additions);
    blocks.push({ section: index, yaml: block.yaml, foreign: options.foreign?.(entry.include) === true });
    refuse(twoPublications(block, sources, index, main));
    sources = { ...block.sources, ...sources };
    unsafe.push(...block.unsafe);
    const items = overrideItems(block, entry.drop, entry.override, index, main);
    sections.push({ id: block.id, title: entry.title ?? block.title, items });
  }
  const known = learnt === undefined ? {} : { learnt: readLearntFile(learnt, file.id, itemsOf({ sections }), unsafe, main, options) };
  const whole = { ...file, ...known, sections, sources, unsafe, file: options.file };
  if (responses === undefined) return whole;
  const more = readResponses(responses, responses, main, options);
  refuse(danglingResponses(more.file, more.yaml, file.id, itemsOf({ sections }), unsafe));
  return {
    ...whole,
    sections: sections.map((section) => ({ ...section, items: section.items.map((item) => withResponses(item, more.file, more.yaml, additions)) })),
    unsafe: unsafe.map((statement) => withStatements(statement, more.file, more.yaml, additions)),
  };
}

/** One key for two publications: facts of the one would cite the other. What is the same in both is one publication. */
function twoPublications(block: ReadBlock, sources: RubricFile["sources"], index: number, main: PositionedYaml): Finding[] {
  return Object.entries(block.sources).flatMap(([key, { body, title, year }]): Finding[] => {
    const other = Object.hasOwn(sources, key) ? sources[key]! : undefined;
    if (other === undefined || (other.body === body && other.title === title && other.year === year)) return [];
    return [
      {
        code: "SW-R06",
        severity: "error",
        file: main.file,
        ...main.positionOf(["sections", index, "include"]),
        message: `the source '${key}' is '${title}' (${year}) in the block and '${other.title}' (${other.year}) in this rubric or another block of it`,
        mend: "Give one of the two another key, in 'sources' and in the facts that name it.",
      },
    ];
  });
}

interface ReadBlock {
  id: string;
  title: string;
  sources: RubricFile["sources"];
  items: Item[];
  unsafe: UnsafeStatement[];
  yaml: PositionedYaml;
  /** As written, for overrides. */
  raw: { id: string }[];
  /** The item with the responses of the block's own file. */
  lengthen: (item: Item) => Item;
}

function readBlockFile(include: string, index: number, main: PositionedYaml, options: LoadOptions, additions: Additions): ReadBlock {
  const yaml = readIncluded(include, "block", main.file, main.positionOf(["sections", index, "include"]), options);
  const parsed = blockSchema.safeParse(yaml.data);
  if (!parsed.success) refuse(findingsOf(parsed.error, yaml, blockSchema));
  const { responses, ...block } = parsed.data!;
  const raw = (yaml.data as { items: { id: string }[] }).items;
  if (responses === undefined) return { ...block, yaml, raw, lengthen: (item) => item };
  const more = readResponses(responses, besideOf(include, responses), yaml, options);
  refuse(danglingResponses(more.file, more.yaml, block.id, block.items, block.unsafe));
  return {
    ...block,
    unsafe: block.unsafe.map((statement) => withStatements(statement, more.file, more.yaml, additions)),
    yaml,
    raw,
    lengthen: (item) => withResponses(item, more.file, more.yaml, additions),
  };
}

/** @param path the file as seen from the rubric. */
function readResponses(written: string, path: string, owner: PositionedYaml, options: LoadOptions): { file: ResponsesFile; yaml: PositionedYaml } {
  const yaml = readIncluded(path, "responses file", owner.file, owner.positionOf(["responses"]), options, written);
  const parsed = responsesSchema.safeParse(yaml.data);
  if (!parsed.success) refuse(findingsOf(parsed.error, yaml, responsesSchema));
  return { file: parsed.data!, yaml };
}

function readLearntFile(path: string, owner: string, items: readonly Item[], unsafe: readonly UnsafeStatement[], main: PositionedYaml, options: LoadOptions): Learnt {
  const elements = items.flatMap((item) => item.elements.map((element) => [`${item.id}/${element.id}`, element.label] as const));
  const labels = new Map([...elements, ...unsafe.map(({ id, label }) => [statementKey(id), label] as const)]);
  return readLearnt(textOf(path, "file of what was learnt", main.file, main.positionOf(["learnt"]), options, path), options.blockFile?.(path) ?? path, owner, labels);
}

function readIncluded(path: string, what: string, file: string, at: { line: number; column: number }, options: LoadOptions, written = path): PositionedYaml {
  const yaml = readYaml(textOf(path, what, file, at, options, written), options.blockFile?.(path) ?? path);
  refuse(yaml.findings);
  return yaml;
}

function textOf(path: string, what: string, file: string, at: { line: number; column: number }, options: LoadOptions, written: string): string {
  try {
    return options.readBlock(path);
  } catch (error) {
    throw new ProblemError([
      {
        code: "SW-R04",
        severity: "error",
        file,
        ...at,
        message: `the ${what === "block" ? "included block" : what} '${written}' cannot be read: ${(error as Error).message}`,
        mend: error instanceof Unreadable ? error.mend : `Name a ${what} relative to this file, inside the same folder tree.`,
      },
    ]);
  }
}

/** A path written in an included file, as seen from the rubric. */
function besideOf(include: string, path: string): string {
  const parts = include.split("/").slice(0, -1);
  for (const part of path.split("/")) {
    if (part === ".." && parts.length > 0 && parts.at(-1) !== "..") parts.pop();
    else if (part !== ".") parts.push(part);
  }
  return parts.join("/");
}

function overrideItems({ items, raw, lengthen }: ReadBlock, drop: string[], override: Record<string, Record<string, unknown>>, index: number, main: PositionedYaml): Item[] {
  const findings: Finding[] = [];
  const known = new Set(items.map((item) => item.id));
  const dangling = (id: string, path: PropertyKey[]) => {
    if (known.has(id)) return;
    findings.push({
      code: "SW-R05",
      severity: "error",
      file: main.file,
      ...main.positionOf(path),
      message: `the block has no item '${id}'`,
      mend: nearOrAll(id, [...known], "Its items are"),
    });
  };
  drop.forEach((id, place) => dangling(id, ["sections", index, "drop", place]));
  Object.keys(override).forEach((id) => dangling(id, ["sections", index, "override", id]));
  const kept = items
    .filter((item) => !drop.includes(item.id))
    .map((item) => {
      const changes = override[item.id];
      if (changes === undefined) return lengthen(item);
      // Merged before validation, so that the defaults of unnamed fields stay the block's own.
      const merged = mergeRaw(raw.find((candidate) => candidate.id === item.id)!, changes);
      const parsed = itemSchema.safeParse(merged);
      // Responses of the block are to the block's own elements, not to those that stand in their place.
      if (parsed.success) return "elements" in changes || "say" in changes ? parsed.data : lengthen(parsed.data);
      findings.push(...findingsOf(parsed.error, main, itemSchema, ["sections", index, "override", item.id]));
      return item;
    });
  refuse(findings);
  return kept;
}

/** An override that brings `elements` replaces the short form, and the other way round. */
function mergeRaw(item: Record<string, unknown>, changes: Record<string, unknown>): Record<string, unknown> {
  const merged = { ...item, ...changes };
  if ("elements" in changes) for (const key of SHORT_FORM) if (!(key in changes)) delete merged[key];
  if ("say" in changes) delete merged["elements"];
  return merged;
}
