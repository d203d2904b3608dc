import { mark } from "../../../src/mark.ts";
import { readPassages, rubricNamed } from "../match/passages.ts";
import { kappaOf, scoresOf } from "../match/scores.ts";
import { toolReading } from "../match/tool.ts";
import { readRehearsals } from "../rehearsals.ts";

/** What `npm run bench:ablation` asks of a matcher that lacks a part: one line of JSON. */
export interface Measured {
  /** F1 over labelled passages. */
  passages: { tuning: number; unseen: number };
  /** Cohen's kappa with a reader over the items of whole stations. */
  stations: { tuned: number; unseen: number };
}

const readings = readPassages().map((passage) => ({ passage, label: toolReading(passage).label }));
const f1 = (wanted: string) => scoresOf(readings.filter(({ passage: { side } }) => side === wanted).map(({ passage, label }) => ({ truth: passage.label === "right", given: label === "right", pair: passage.pair }))).f1;

const marks = readRehearsals().flatMap(({ side, transcript, marks: { rubric, items } }) => mark(transcript, rubricNamed(rubric)).items.flatMap(({ id, content }) => (items[id] === undefined ? [] : [{ side, pair: [items[id].content, content] as const }])));
const kappa = (wanted: string) => kappaOf(marks.filter(({ side }) => side === wanted).map(({ pair }) => pair));

const measured: Measured = { passages: { tuning: f1("tuning"), unseen: f1("unseen") }, stations: { tuned: kappa("tuned"), unseen: kappa("unseen") } };
console.log(JSON.stringify(measured));
