import { renameSync } from "node:fs";
import { fileWriter, ParquetWriter, schemaFromColumnData } from "hyparquet-writer";
import type { Column } from "../../cohort/gradebook.ts";

/** Rows held at a time, and rows of a group in the file. */
const GROUP = 5_000;

interface TableColumn<T> {
  name: string;
  type: Column["type"];
  value: (row: T) => string | number | boolean | null;
}

/** A Parquet file (Apache Parquet format 2, Snappy) written group by group, so that memory stays flat. */
export class ParquetTable<T> {
  readonly #path: string;
  readonly #columns: readonly TableColumn<T>[];
  readonly #writer: ParquetWriter;
  #held: unknown[][];

  /** @param path takes its name when finished; until then it is PATH.new. */
  constructor(path: string, columns: readonly TableColumn<T>[]) {
    this.#path = path;
    this.#columns = columns;
    this.#held = columns.map(() => []);
    const schema = schemaFromColumnData({ columnData: columns.map(({ name, type }) => ({ name, type, data: [], nullable: true })) });
    this.#writer = new ParquetWriter({ writer: fileWriter(`${path}.new`), schema });
  }

  add(row: T): void {
    this.#columns.forEach(({ value }, place) => this.#held[place]!.push(value(row)));
    if (this.#held[0]!.length >= GROUP) this.#write();
  }

  finish(): void {
    if (this.#held[0]!.length > 0) this.#write();
    void this.#writer.finish();
    renameSync(`${this.#path}.new`, this.#path);
  }

  #write(): void {
    const columnData = this.#columns.map(({ name, type }, place) => ({ name, type, data: this.#held[place]! }));
    void this.#writer.write({ columnData, rowGroupSize: GROUP });
    this.#held = this.#columns.map(() => []);
  }
}
