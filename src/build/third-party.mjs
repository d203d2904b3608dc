// The licences of the packages whose code is inside the bundle: their terms ask that the text travels with it.
import { readdir, readFile } from "node:fs/promises";
import { join } from "node:path";

const LICENCE_FILE = /^(licen[cs]e|copying|notice)/i;

/**
 * @param {string[]} inputs paths of all source files in the bundle
 * @returns {Promise<string>}
 */
export async function thirdPartyText(inputs) {
  const folders = [...new Set(inputs.map(packageFolder).filter((folder) => folder !== null))].sort();
  const parts = await Promise.all(folders.map(describe));
  return [
    "saidwell holds code of these packages, each under its own licence.\n",
    `${parts.map(({ name, version, license }) => `${name} ${version} (${license})`).join("\n")}\n`,
    ...parts.map(({ name, version, text }) => `${"=".repeat(78)}\n${name} ${version}\n\n${text.trim()}\n`),
  ].join("\n");
}

/** The innermost package of a path: `node_modules/a/node_modules/@b/c/x.js` is of `@b/c`. */
function packageFolder(path) {
  return /^(.*node_modules\/(?:@[^/]+\/)?[^/]+)\//.exec(path.replaceAll("\\", "/"))?.[1] ?? null;
}

async function describe(folder) {
  const { name, version, license, author } = JSON.parse(await readFile(join(folder, "package.json"), "utf8"));
  const files = (await readdir(folder)).filter((file) => LICENCE_FILE.test(file));
  const texts = await Promise.all(files.map((file) => readFile(join(folder, file), "utf8")));
  const by = typeof author === "string" ? author : author?.name;
  // A few packages name their licence and ship no text of it.
  const text = texts.length > 0 ? texts.join("\n\n") : `Licence: ${license}${by === undefined ? "" : `, by ${by}`} (the package ships no text of it)`;
  return { name, version, license: license ?? "see its text", text };
}
