import { execFileSync } from "node:child_process";
import { posix } from "node:path";
import { loadRubric } from "../rubric/load.ts";
import type { Rubric } from "../rubric/schema.ts";
import { problem } from "./problems.ts";
import { IS_RUBRIC, isShipped, MAX_RUBRIC_BYTES, SHIPPED } from "./rubric-file.ts";
import { shippedBlock } from "./shipped.ts";

/** `REVISION:PATH` as git writes it; a single letter before the colon is a drive. */
const SPECIFICATION = /^([^:]{2,}|@):(.+)$/s;

export function looksLikeRevision(text: string): boolean {
  return SPECIFICATION.test(text) && !text.startsWith("-");
}

/**
 * A rubric as it was in a revision, its blocks from the same revision. The path counts from the top of the repository,
 * `./PATH` from the folder the command runs in, as git has it.
 * @throws ProblemError SW-R01 and those of loadRubric
 */
export function rubricFromRevision(specification: string): Rubric {
  const [, revision, path] = SPECIFICATION.exec(specification)!;
  let text: string;
  try {
    text = showBlob(specification);
  } catch (error) {
    throw problem("SW-R01", specification, `the rubric cannot be read from git: ${(error as Error).message}`, "Write REVISION:PATH, the path from the top of the repository, such as HEAD~1:rubrics/station.yaml.");
  }
  const fileOf = (include: string) => `${revision}:${beside(path!, include)}`;
  return loadRubric(text, {
    file: specification,
    blockFile: (include) => (isShipped(include) ? include : fileOf(include)),
    foreign: isShipped,
    readBlock: (include) => {
      if (isShipped(include)) return shippedBlock(include.slice(SHIPPED.length));
      const block = showBlob(fileOf(include));
      if (IS_RUBRIC.test(block)) throw new Error("it is a rubric, and only blocks can be included");
      return block;
    },
  });
}

/** The path of an included file; like a rubric on disk, one in git includes from its own folder and below alone. */
function beside(rubric: string, include: string): string {
  if (posix.isAbsolute(include) || include.includes("\\")) throw new Error("write it relative to the rubric, with forward slashes");
  const inner = posix.normalize(include);
  if (inner === ".." || inner.startsWith("../")) throw new Error("it lies outside the rubric's folder");
  const folder = posix.dirname(rubric);
  const joined = posix.join(folder, inner);
  return rubric.startsWith("./") || rubric.startsWith("../") ? (joined.startsWith("../") ? joined : `./${joined}`) : joined;
}

function showBlob(specification: string): string {
  let bytes: Buffer;
  try {
    // No shell, and nothing the repository's own settings could run: no filter for showing text.
    bytes = execFileSync("git", ["--no-pager", "show", "--no-textconv", "--no-ext-diff", "--end-of-options", specification], { maxBuffer: MAX_RUBRIC_BYTES, stdio: ["ignore", "pipe", "pipe"] });
  } catch (error) {
    const { code, stderr } = error as NodeJS.ErrnoException & { stderr?: Buffer };
    if (code === "ENOENT") throw new Error("the program git is not there", { cause: error });
    if (code === "ENOBUFS") throw new Error(`it is larger than ${MAX_RUBRIC_BYTES / 1024 / 1024} MB`, { cause: error });
    const said = stderr?.toString("utf8").split("\n")[0]?.replace(/^fatal: /, "");
    throw new Error(said === undefined || said === "" ? "git gives no reason" : said, { cause: error });
  }
  try {
    return new TextDecoder("utf-8", { fatal: true }).decode(bytes);
  } catch {
    throw new Error("it is not UTF-8 text");
  }
}
