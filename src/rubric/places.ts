import type { Finding } from "../problem/problem.ts";
import { keyOf, unsafeKeyOf, type Additions } from "./additions.ts";
import type { PositionedYaml } from "./positioned-yaml.ts";

/** Where something of a rubric is written. */
export interface Place {
  file: string;
  line: number;
  column: number;
  /** Of what stands in a block that is not the person's to mend: file and line in that block; the place is the include's. */
  within?: string;
}

/** A block as it was read in: at which entry of `sections` it stands. */
export interface IncludedBlock {
  section: number;
  yaml: PositionedYaml;
  /** Part of the program, not a file of the person's: what is found in it is told where it is included. */
  foreign: boolean;
}

/** A finding at a place of a rubric. */
export function findingIn({ within, ...place }: Place, finding: Omit<Finding, "file" | "line" | "column">): Finding {
  const { message, ...rest } = finding;
  return { ...rest, ...place, message: within === undefined ? message : `${message} (${within})` };
}

interface RawItem {
  id?: string;
  elements?: { id?: string }[] | undefined;
}

interface RawSection {
  items?: RawItem[];
  drop?: string[];
  override?: Record<string, RawItem>;
}

/** Finds the line of everything in a rubric, in the rubric's own file or in that of the block it came from. */
export class RubricPlaces {
  private readonly main: PositionedYaml;
  private readonly blocks: readonly IncludedBlock[];
  private readonly additions: Additions;

  constructor(main: PositionedYaml, blocks: readonly IncludedBlock[], additions: Additions = new Map()) {
    this.main = main;
    this.blocks = blocks;
    this.additions = additions;
  }

  /** The rubric's file, those of its blocks, and those of their responses. */
  files(): string[] {
    const added = [...this.additions.values()].flat().map(({ yaml }) => yaml);
    return [...new Set([this.main, ...this.blocks.map(({ yaml }) => yaml), ...added].map(({ file }) => file))];
  }

  /** @param path keys from the top of the rubric's own file; the deepest part that is written counts. */
  top(path: readonly PropertyKey[] = []): Place {
    return placeIn(this.main, path);
  }

  /** Whether the rubric's own file has this. */
  hasTop(path: readonly PropertyKey[]): boolean {
    return written(this.main.data, path);
  }

  /** Where a source is written that no fact beside it names: in the rubric, or in a block of the person's own, whose facts count also where the rubric drops them. */
  idleSource(key: string): Place | null {
    if (this.hasTop(["sources", key])) return this.top(["sources", key]);
    const block = this.blocks.find(({ yaml }) => written(yaml.data, ["sources", key]));
    return block === undefined || block.foreign || citesSource(block.yaml.data, key) ? null : placeIn(block.yaml, ["sources", key]);
  }

  /** @param index of the section: its id, or the include that brings it in. */
  section(index: number): Place {
    return this.top(["sections", index, this.blocks.some(({ section }) => section === index) ? "include" : "id"]);
  }

  /** @param path keys inside the item as it is written. */
  item(id: string, path: readonly PropertyKey[] = []): Place {
    const found = this.find(id);
    if (found === null) return this.top();
    const { yaml, at, override, block } = found;
    if (override !== null && path.length > 0 && written(this.main.data, [...override, path[0]!])) return placeIn(this.main, [...override, ...path]);
    return block === null ? placeIn(yaml, [...at, ...path]) : this.inBlock(block, [...at, ...path], override);
  }

  /** Whether an override, and not the item itself, says this of it. */
  overrides(id: string, key: string): boolean {
    const override = this.find(id)?.override;
    return override !== null && override !== undefined && written(this.main.data, [...override, key]);
  }

  /** Whether the rubric itself says this of the item: the item is its own, or it overrides that of a block. */
  isOwn(id: string, key: string): boolean {
    return this.find(id)?.block === null || this.overrides(id, key);
  }

  /** The ids of all items with this id, in the order of the sections; more than one where an id stands twice. */
  occurrences(id: string): Place[] {
    return this.sections().flatMap((entry, section) => {
      const block = this.blocks.find((candidate) => candidate.section === section);
      const items = block === undefined ? entry.items : (block.yaml.data as { items?: RawItem[] }).items;
      if (block !== undefined && entry.drop?.includes(id)) return [];
      return (items ?? []).flatMap((item, place) => {
        if (item.id !== id) return [];
        return [block === undefined ? this.top(["sections", section, "items", place, "id"]) : this.inBlock(block, ["items", place, "id"], null)];
      });
    });
  }

  /**
   * @param place of the element among those of its item.
   * @param path keys inside the element; the short form of an item has them on the item itself.
   */
  element(id: string, place: number, path: readonly PropertyKey[] = []): Place {
    const raw = this.find(id)?.raw;
    const [list, index] = path;
    if ((list === "say" || list === "incorrect") && typeof index === "number") {
      const added = this.added(keyOf(id, raw?.elements?.[place]?.id ?? id, list), index);
      if (added !== null) return added;
    }
    return this.item(id, raw?.elements === undefined ? path : ["elements", place, ...path]);
  }

  /** @param index of the statement among all of the rubric's, those of its blocks included. */
  unsafe(index: number, path: readonly PropertyKey[] = []): Place {
    const [list, phrase] = path;
    if (list === "say" && typeof phrase === "number") {
      const added = this.added(unsafeKeyOf(this.statementId(index)), phrase);
      if (added !== null) return added;
    }
    let before = listLength(this.main.data, "unsafe");
    if (index < before) return this.top(["unsafe", index, ...path]);
    for (const block of this.blocks) {
      const count = listLength(block.yaml.data, "unsafe");
      if (index < before + count) return this.inBlock(block, ["unsafe", index - before, ...path], null);
      before += count;
    }
    return this.top();
  }

  /** In a block's own file; of a block that is no file of the person's, where the rubric overrides or includes it. */
  private inBlock({ section, yaml, foreign }: IncludedBlock, path: readonly PropertyKey[], override: PropertyKey[] | null): Place {
    const own = placeIn(yaml, path);
    if (!foreign) return own;
    return { ...this.top(override ?? ["sections", section, "include"]), within: `${own.file}, line ${own.line}` };
  }

  /** Where a phrase stands that came from a responses file; null for one of the rubric's own. */
  private added(key: string, index: number): Place | null {
    const run = this.additions.get(key)?.find(({ from, count }) => index >= from && index < from + count);
    return run === undefined ? null : placeIn(run.yaml, [...run.path, index - run.from]);
  }

  private statementId(index: number): string {
    const lists = [this.main, ...this.blocks.map(({ yaml }) => yaml)].flatMap(({ data }) => (data as { unsafe?: { id?: string }[] }).unsafe ?? []);
    return lists[index]?.id ?? "";
  }

  private sections(): RawSection[] {
    return (this.main.data as { sections?: RawSection[] }).sections ?? [];
  }

  private find(id: string): { yaml: PositionedYaml; at: PropertyKey[]; raw: RawItem; override: PropertyKey[] | null; block: IncludedBlock | null } | null {
    const sections = this.sections();
    for (const [section, entry] of sections.entries()) {
      const place = entry.items?.findIndex((item) => item.id === id) ?? -1;
      if (place >= 0) return { yaml: this.main, at: ["sections", section, "items", place], raw: entry.items![place]!, override: null, block: null };
    }
    for (const block of this.blocks) {
      const { section, yaml } = block;
      const items = (yaml.data as { items?: RawItem[] }).items ?? [];
      const place = items.findIndex((item) => item.id === id);
      if (place < 0 || sections[section]?.drop?.includes(id)) continue;
      const override = ["sections", section, "override", id];
      const changes = sections[section]?.override?.[id];
      return { yaml, at: ["items", place], raw: { ...items[place]!, ...changes, ...("say" in (changes ?? {}) && { elements: undefined }) }, override: changes === undefined ? null : override, block };
    }
    return null;
  }
}

function placeIn(yaml: PositionedYaml, path: readonly PropertyKey[]): Place {
  return { file: yaml.file, ...yaml.positionOf(path) };
}

function written(data: unknown, path: readonly PropertyKey[]): boolean {
  let value = data;
  for (const key of path) {
    if (value === null || typeof value !== "object" || !(key in value)) return false;
    value = (value as Record<PropertyKey, unknown>)[key];
  }
  return true;
}

/** Whether a fact anywhere in the text names the source. */
function citesSource(data: unknown, key: string): boolean {
  if (data === null || typeof data !== "object") return false;
  return Object.entries(data).some(([name, value]) => (name === "source" && value === key) || citesSource(value, key));
}

function listLength(data: unknown, key: string): number {
  const list = (data as Record<string, unknown>)[key];
  return Array.isArray(list) ? list.length : 0;
}
