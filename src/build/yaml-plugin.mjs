// Lets the code import YAML that people edit (the lexicon, station cues) as plain data.
// Large tables in JSON are parsed as text at run time, which V8 does faster than reading them as code.
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
