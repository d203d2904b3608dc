/* Chunks cost time to open: the commands that read and write rubrics share one. */
export { runRubricList, runRubricShow } from "./rubric-show.ts";
export { runRubricNew } from "./rubric-new.ts";
