#!/usr/bin/env node
// Older Node versions fail on the bundle with a riddle; this says it in words.
const [major, minor] = process.versions.node.split(".").map(Number);
if (major < 20 || (major === 20 && minor < 19)) {
  console.error(`saidwell needs Node 20.19 or later; this is ${process.versions.node}.`);
  process.exit(70);
}
await import("../dist/cli.js");
