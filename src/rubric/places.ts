import { keyOf, unsafeKeyOf, type Additions } from "./additions.ts";
import type { PositionedYaml } from "./positioned-yaml.ts";

/** Where something of a rubric is written. */
export interface Place {
  file: string;
  line: number;
  column: number;
}

/** A block as it was read in: at which entry of `sections` it stands. */
export interface IncludedBlock {
  section: number;
  yaml: PositionedYaml;
}

interface RawItem {
  id?: string;
  elements?: { id?: string }[] | undefined;
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

  /** @param path keys inside the item as it is written. */
  item(id: string, path: readonly PropertyKey[] = []): Place {
    const found = this.find(id);
    if (found === null) return this.top();
    const { yaml, at, override } = found;
    if (override !== null && path.length > 0 && written(this.main.data, [...override, path[0]!])) return placeIn(this.main, [...override, ...path]);
    return placeIn(yaml, [...at, ...path]);
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
    for (const { yaml } of this.blocks) {
      const count = listLength(yaml.data, "unsafe");
      if (index < before + count) return placeIn(yaml, ["unsafe", index - before, ...path]);
      before += count;
    }
    return this.top();
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

  private find(id: string): { yaml: PositionedYaml; at: PropertyKey[]; raw: RawItem; override: PropertyKey[] | null } | null {
    const sections = (this.main.data as { sections?: { items?: RawItem[] }[] }).sections ?? [];
    for (const [section, entry] of sections.entries()) {
      const place = entry.items?.findIndex((item) => item.id === id) ?? -1;
      if (place >= 0) return { yaml: this.main, at: ["sections", section, "items", place], raw: entry.items![place]!, override: null };
    }
    for (const { section, yaml } of this.blocks) {
      const items = (yaml.data as { items?: RawItem[] }).items ?? [];
      const place = items.findIndex((item) => item.id === id);
      if (place < 0) continue;
      const override = ["sections", section, "override", id];
      const changes = (sections[section] as { override?: Record<string, RawItem> } | undefined)?.override?.[id];
      return { yaml, at: ["items", place], raw: { ...items[place]!, ...changes, ...("say" in (changes ?? {}) && { elements: undefined }) }, override: changes === undefined ? null : override };
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

function listLength(data: unknown, key: string): number {
  const list = (data as Record<string, unknown>)[key];
  return Array.isArray(list) ? list.length : 0;
}
