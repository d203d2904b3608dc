// `npm run build`: dist/ with the bundled program, the rubrics, the licences and the types.
import { bundle } from "./bundle.mjs";
import { linkCommand } from "./link.mjs";
import { writeTypes } from "./types.mjs";

await bundle("dist");
writeTypes();
await linkCommand();
