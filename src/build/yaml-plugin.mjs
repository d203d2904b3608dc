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
    // Gaps in steps of two bytes take more room and a third of the time to read.
    build.onLoad({ filter: /role-weights\.json$/ }, async ({ path }) => {
      const weights = JSON.parse(await readFile(path, "utf8"));
      const gaps = [];
      let group = 0;
      let shift = 0;
      for (const byte of Buffer.from(weights.hashes, "base64")) {
        group |= (byte & 127) << shift;
        shift += 7;
        if (byte >= 128) continue;
        gaps.push(group);
        group = 0;
        shift = 0;
      }
      if (gaps.some((gap) => gap > 0xffff)) throw new Error("a gap between two features is too wide for two bytes");
      return { contents: `export default JSON.parse(${JSON.stringify(JSON.stringify({ ...weights, hashes: undefined, gaps: Buffer.from(Uint16Array.from(gaps).buffer).toString("base64") }))});`, loader: "js" };
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
