// In a clone, npm links the commands of packages but not the clone's own. This one makes `npx saidwell` run the
// clone's build at once; without it npm would first copy the clone into its cache.
import { existsSync } from "node:fs";
import { mkdir, rm, symlink } from "node:fs/promises";

export async function linkCommand() {
  // Windows needs a script in place of a link; there npm's own way is good enough.
  if (process.platform === "win32" || !existsSync("node_modules")) return;
  await mkdir("node_modules/.bin", { recursive: true });
  await rm("node_modules/.bin/saidwell", { force: true });
  await symlink("../../bin/saidwell.js", "node_modules/.bin/saidwell");
}
