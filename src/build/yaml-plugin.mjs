// Lets the code import YAML that people edit (the lexicon, station cues) as plain data.
// Large tables in JSON are parsed as text at run time, which V8 does faster than reading them as code.
// One transform, used by the bundler and by the test runner, so that both see the same data.
import { readFile } from "node:fs/promises";
import { parse } from "yaml";
import { inBlocks } from "../station/weight-blocks.mjs";

function toModule(source) {
  return `export default ${JSON.stringify(parse(source))};`;
}

/** The stored weights with their features as the program looks them up. */
export function laidOut({ hashes, ...weights }) {
  const { starts, ends } = inBlocks(Buffer.from(hashes, "base64"));
  return { ...weights, starts: Buffer.from(starts.buffer).toString("base64"), ends: Buffer.from(ends.buffer).toString("base64") };
}

export const yamlForEsbuild = {
  name: "yaml",
  setup(build) {
    build.onLoad({ filter: /\.yaml$/ }, async ({ path }) => ({
      contents: toModule(await readFile(path, "utf8")),
      loader: "js",
    }));
    // The weights as the program looks them up: unpacking a hundred thousand at each start takes milliseconds.
    build.onLoad({ filter: /role-weights\.json$/ }, async ({ path }) => {
      const weights = JSON.parse(await readFile(path, "utf8"));
      return { contents: `export default JSON.parse(${JSON.stringify(JSON.stringify(laidOut(weights)))});`, loader: "js" };
    });
    build.onLoad({ filter: /(lookup|stems|homophones)\.json$/ }, async ({ path }) => ({
      contents: `export default JSON.parse(${JSON.stringify(JSON.stringify(JSON.parse(await readFile(path, "utf8"))))});`,
      loader: "js",
    }));
  },
};

export const yamlForVite = {
  name: "yaml",
  transform(source, id) {
    return id.endsWith(".yaml") ? { code: toModule(source), map: null } : undefined;
  },
};
