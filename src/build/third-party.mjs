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
    ...(await credits(inputs)),
    ...parts.map(({ name, version, text }) => `${"=".repeat(78)}\n${name} ${version}\n\n${text.trim()}\n`),
  ].join("\n");
}

/** The innermost package of a path: `node_modules/a/node_modules/@b/c/x.js` is of `@b/c`. */
function packageFolder(path) {
  return /^(.*node_modules\/(?:@[^/]+\/)?[^/]+)\//.exec(path.replaceAll("\\", "/"))?.[1] ?? null;
}

/** A few packages name their licence and ship no text of it; the standard text stands in. An unknown one stops the build. */
async function standardText(name, license, by) {
  const text = await readFile(new URL(`./licences/${license}.txt`, import.meta.url), "utf8").catch(() => {
    throw new Error(`${name}: its licence '${license}' has no text, neither in the package nor in src/build/licences`);
  });
  return `Licence ${license}${by === undefined ? "" : `, ${by}`}. The package ships no text of it; the standard text:\n\n${text}`;
}

/** Data fitted on or taken from others' work names it under `credit`. */
async function credits(inputs) {
  const lines = [];
  for (const input of inputs.filter((path) => path.endsWith(".json") && !path.includes("node_modules"))) {
    const { credit } = JSON.parse(await readFile(input, "utf8"));
    if (Array.isArray(credit)) lines.push(`${input}:`, ...credit.map((line) => `  ${line}`));
  }
  return lines.length === 0 ? [] : [`Data inside the program that rests on the work of others:\n\n${lines.join("\n")}\n`];
}

async function describe(folder) {
  const { name, version, license, author } = JSON.parse(await readFile(join(folder, "package.json"), "utf8"));
  const files = (await readdir(folder)).filter((file) => LICENCE_FILE.test(file));
  const texts = await Promise.all(files.map((file) => readFile(join(folder, file), "utf8")));
  const by = typeof author === "string" ? author : author?.name;
  return { name, version, license: license ?? "see its text", text: texts.length > 0 ? texts.join("\n\n") : await standardText(name, license, by) };
}
