/* The commands that mark and merge cohorts, in one bundle. */
export { runCohort } from "./cohort.ts";
export { runMerge } from "./merge.ts";
