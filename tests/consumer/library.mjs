// Uses the installed package as a program would (.ci/run copies this folder into an empty one).
import { readFileSync } from "node:fs";
import { mark, loadRubric, readTranscript, render, findStation, ProblemError } from "saidwell";
import eyeDrops from "saidwell/rubrics/eye-drops.json" with { type: "json" };

const transcript = readTranscript(readFileSync("rehearsal.txt"), { file: "rehearsal.txt" });
const sheet = mark(transcript, eyeDrops, { target: 300 });
if (!render(sheet, { format: "text", width: 72 }).startsWith("Mark sheet")) throw new Error("no sheet");
if (JSON.parse(render(sheet, { format: "json" })).time.target !== 300) throw new Error("the target was not taken");
if (findStation(transcript).turns.length < 2) throw new Error("no turns");
const own = loadRubric(readFileSync("own.yaml", "utf8"), { file: "own.yaml", readBlock: () => "" });
mark(transcript, own);
try {
  loadRubric("saidwell: [", { file: "bad.yaml", readBlock: () => "" });
  throw new Error("a broken rubric was taken");
} catch (error) {
  if (!(error instanceof ProblemError)) throw error;
}
