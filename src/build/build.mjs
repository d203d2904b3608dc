// `npm run build`: dist/ with the bundled program, the rubrics, the licences and the types.
import { bundle } from "./bundle.mjs";
import { writeCodeCache } from "./code-cache.mjs";
import { linkCommand } from "./link.mjs";
import { writeTypes } from "./types.mjs";

await bundle("dist");
writeTypes();
writeCodeCache();
await linkCommand();
