// What the build needs of the product to lay the rubrics out.
export { loadRubric } from "../rubric/load.ts";
export { compileRubric } from "../matching/compile.ts";
export { packRubric } from "../matching/packed.ts";
