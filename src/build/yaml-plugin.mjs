// Lets the code import YAML that people edit (the lexicon, station cues) as plain data.
// Large tables in JSON are parsed as text at run time, which V8 does faster than reading them as code.
// One transform, used by the bundler and by the test runner, so that both see the same data.
import { readFile } from "node:fs/promises";
import { parse } from "yaml";

function toModule(source) {
  return `export default ${JSON.stringify(parse(source))};`;
}

/**
 * What src/station/weights-format.ts makes of the stored differences (a test holds the two together): Node 20 cannot
 * import that file here.
 * @param {Uint8Array} stored
 */
export function inBlocks(stored) {
  const starts = new Uint32Array((1 << 16) + 1);
  const ends = [];
  let hash = 0;
  let group = 0;
  let shift = 0;
  for (const byte of stored) {
    group |= (byte & 127) << shift;
    shift += 7;
    if (byte >= 128) continue;
    hash += group;
    starts[(hash >> 6) + 1] += 1;
    ends.push(hash & 63);
    group = 0;
    shift = 0;
  }
  for (let block = 1; block < starts.length; block++) starts[block] += starts[block - 1];
  return { starts, ends: Uint8Array.from(ends) };
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
      const { starts, ends } = inBlocks(Buffer.from(weights.hashes, "base64"));
      return { contents: `export default JSON.parse(${JSON.stringify(JSON.stringify({ ...weights, hashes: undefined, starts: Buffer.from(starts.buffer).toString("base64"), ends: Buffer.from(ends.buffer).toString("base64") }))});`, loader: "js" };
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
