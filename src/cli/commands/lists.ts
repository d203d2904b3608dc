/* The commands that only print what the program holds, in one small bundle. */
export { runRubrics } from "./rubrics.ts";
export { runCodes } from "./codes.ts";
export { runCompletion } from "./completion.ts";
