#!/usr/bin/env node
import { setFlagsFromString } from "node:v8";

// Older Node versions fail on the bundle with a riddle; this says it in words.
const [major, minor] = process.versions.node.split(".").map(Number);
if (major < 20 || (major === 20 && minor < 19)) {
  console.error(`saidwell needs Node 20.19 or later; this is ${process.versions.node}.`);
  process.exit(70);
}
// V8 collects garbage with several threads, which in a process this short and small mostly wait for each other: one
// thread takes 40% less processor time here, and less on a whole morning's recording too (npm run bench:start).
setFlagsFromString("--single-threaded-gc");
await import("../dist/cli.js");
