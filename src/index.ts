/*
 * The public door of the library.
 *
 *   const transcript = readTranscript(bytes, { file: "rehearsal.vtt" });
 *   const sheet = mark(transcript, rubric, { target: 390 });
 *   console.log(render(sheet, { format: "text", width: 100 }));
 *
 * A shipped rubric is JSON inside the package (`saidwell/rubrics/NAME.json`); `loadRubric` reads one from YAML.
 */
export { readTranscript } from "./transcript/read.ts";
export { findStation } from "./station/find.ts";
export { loadRubric, type LoadOptions } from "./rubric/load.ts";
export { mark, type MarkOptions } from "./mark.ts";
export { readCorrections } from "./scoring/corrections-file.ts";
export type { Correction, Corrections } from "./scoring/corrections.ts";
export { render, type RenderOptions } from "./report/render.ts";
export { ProblemError, formatFinding, type Finding } from "./problem/problem.ts";
export { CATALOGUE, EXIT, type CatalogueEntry, type ExitCode, type FindingCode } from "./problem/catalogue.ts";
export type * from "./transcript/types.ts";
export type * from "./station/types.ts";
export type * from "./matching/types.ts";
export type * from "./scoring/types.ts";
export type { Rubric, Section, Item, Element, Quantity, Fact, UnsafeStatement, PatientQuestion, Severity, ItemKind, Credit } from "./rubric/schema.ts";
