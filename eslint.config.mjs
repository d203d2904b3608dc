import boundaries from "eslint-plugin-boundaries";
import tseslint from "typescript-eslint";

// The design's table of layers: who may import whom. `problem` is a leaf that every layer may use.
const LAYERS = {
  problem: [],
  transcript: [],
  language: [],
  station: ["transcript", "language"],
  rubric: ["language"],
  matching: ["language", "rubric", "station", "transcript"],
  scoring: ["transcript", "language", "station", "rubric", "matching"],
  mark: ["transcript", "language", "station", "rubric", "matching", "scoring"],
  review: ["transcript", "language", "station", "rubric", "matching", "scoring", "mark"],
  cohort: ["station", "rubric", "scoring", "mark"],
  report: ["transcript", "station", "rubric", "matching", "scoring", "mark", "review", "cohort"],
  cli: ["transcript", "language", "station", "rubric", "matching", "scoring", "mark", "review", "cohort", "report", "index"],
  index: ["transcript", "station", "rubric", "scoring", "mark", "report"],
};

export default tseslint.config(
  { ignores: ["dist", "node_modules", "coverage"] },
  ...tseslint.configs.recommended,
  {
    rules: {
      "@typescript-eslint/no-unused-vars": ["error", { argsIgnorePattern: "^_" }],
      "max-lines": ["error", { max: 400, skipBlankLines: true, skipComments: true }],
    },
  },
  {
    files: ["src/**/*.ts"],
    ignores: ["src/build/**"],
    plugins: { boundaries },
    settings: {
      "import/resolver": { node: { extensions: [".ts"] } },
      "boundaries/elements": [
        { type: "mark", pattern: "src/mark.ts", mode: "full" },
        { type: "index", pattern: "src/index.ts", mode: "full" },
        ...Object.keys(LAYERS)
          .filter((layer) => layer !== "mark" && layer !== "index")
          .map((layer) => ({ type: layer, pattern: `src/${layer}/**`, mode: "full" })),
      ],
    },
    rules: {
      "boundaries/no-unknown-files": "error",
      "boundaries/element-types": [
        "error",
        {
          default: "disallow",
          rules: Object.entries(LAYERS).map(([from, allow]) => ({ from, allow: [from, "problem", ...allow] })),
        },
      ],
    },
  },
);
