/* The commands that read a transcript, in one bundle: fewer files to open at start-up. */
export { runMark } from "./mark.ts";
export { runLabel } from "./label.ts";
export { runExplain } from "./explain.ts";
