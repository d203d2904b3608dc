// Lets the code import YAML that people edit (the lexicon, station cues) as plain data.
// One transform, used by the bundler and by the test runner, so that both see the same data.
import { readFile } from "node:fs/promises";
import { parse } from "yaml";

function toModule(source) {
  return `export default ${JSON.stringify(parse(source))};`;
}

export const yamlForEsbuild = {
  name: "yaml",
  setup(build) {
    build.onLoad({ filter: /\.yaml$/ }, async ({ path }) => ({
      contents: toModule(await readFile(path, "utf8")),
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
