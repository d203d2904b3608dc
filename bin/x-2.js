#!/usr/bin/env node
"use strict";
// CommonJS (bin/package.json says so): Node's loader of ES modules costs time of its own.
/* eslint-disable @typescript-eslint/no-require-imports */
const { readFileSync } = require("node:fs");
const { dirname, join } = require("node:path");
const { setFlagsFromString } = require("node:v8");
const { constants, Script } = require("node:vm");

// Older Node versions fail on the bundle with a riddle; this says it in words.
const [major, minor] = process.versions.node.split(".").map(Number);
if (major < 20 || (major === 20 && minor < 19)) {
  console.error(`saidwell needs Node 20.19 or later; this is ${process.versions.node}.`);
  process.exit(70);
}
// A rehearsal is marked in a fraction of a second: V8's optimising compiler costs more than it gives back in that
// time. It still comes in for what runs long: the default is 132 kB of bytecode run in a function; at 330 kB marking took
// a twelfth less than at 1320, which was best before the rubrics grew.
setFlagsFromString("--interrupt-budget=330000");
// Likewise a regular expression is compiled only when it has run fifty times, not at its second run.
setFlagsFromString("--regexp-tier-up-ticks=50");

// What the build compiled stands beside the program; another version of Node refuses it and compiles anew.
const file = join(dirname(__dirname), "dist", "cli.cjs");
const script = new Script(readFileSync(file, "latin1"), { filename: file, cachedData: compiledBefore(), importModuleDynamically: constants.USE_MAIN_CONTEXT_DEFAULT_LOADER });
// Checking a rubric or a cohort runs long enough for the optimiser to pay; set behind the script, whose kept form
// answers to the flags it was made with. A check is short enough to want it later: three times the default took a sixth
// less processor time for one rubric and no more for sixteen; ten times took more for sixteen.
if (!["mark", "explain", "label"].includes(process.argv[2])) {
  setFlagsFromString(`--interrupt-budget=${process.argv[2] === "rubric" && process.argv[3] === "check" ? 396000 : 132000}`);
  setFlagsFromString("--regexp-tier-up-ticks=1");
}
for (const f of "--always-sparkplug".split(' ')) if (f) setFlagsFromString(f);const program = { exports: {} };
script.runInThisContext()(program.exports, requireLazily, program, file, dirname(file));

/**
 * What the program asks for: packages beside it, parts of Node. Some parts take milliseconds to load, and marking one
 * transcript never calls them.
 */
function requireLazily(id) {
  if (id.startsWith("./")) return require(join(dirname(file), id));
  if (!["node:child_process", "node:crypto", "node:fs/promises"].includes(id)) return require(id);
  const get = (_, name) => require(id)[name];
  return new Proxy({}, { get, has: (_, name) => name in require(id), ownKeys: () => Reflect.ownKeys(require(id)), getOwnPropertyDescriptor: (_, name) => ({ get: () => require(id)[name], enumerable: true, configurable: true }) });
}

function compiledBefore() {
  try {
    return readFileSync(`${file}.cache`);
  } catch {
    return undefined;
  }
}

// For the build, which keeps what a run compiled (src/build/code-cache.mjs).
module.exports = { script, file, finished: program.exports.finished };
