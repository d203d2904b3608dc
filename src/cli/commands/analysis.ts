/* The commands that read a cohort's results, in one bundle. */
export { runAgree } from "./agree.ts";
export { runItems } from "./items.ts";
export { runCutScore } from "./cutscore.ts";
export { runProgress } from "./progress.ts";
export { runRubricSheet } from "./rubric-sheet.ts";
