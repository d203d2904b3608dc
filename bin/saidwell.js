#!/usr/bin/env node
import { setFlagsFromString } from "node:v8";

// Older Node versions fail on the bundle with a riddle; this says it in words.
const [major, minor] = process.versions.node.split(".").map(Number);
if (major < 20 || (major === 20 && minor < 19)) {
  console.error(`saidwell needs Node 20.19 or later; this is ${process.versions.node}.`);
  process.exit(70);
}
// A rehearsal is marked in a fraction of a second: V8's optimising compiler costs more than it gives back in that
// time. It still comes in for what runs long (the default is 132 kB of bytecode run in a function, this is 4 MB).
setFlagsFromString("--interrupt-budget=4000000");
await import("../dist/cli.js");
