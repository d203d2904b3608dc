import { mkdirSync, readFileSync, writeFileSync } from "node:fs";
import { join } from "node:path";
import { readPhrase } from "../../../src/matching/phrase.ts";
import type { Element, Rubric } from "../../../src/rubric/schema.ts";
import { seededRandom } from "../../../src/cohort/statistics/random.ts";

/*
 * Invented rehearsals for the benchmark of cohorts: a shipped rubric's own wordings, small talk and a patient's replies,
 * a thousand words, unlabelled, in paragraphs of about 20 seconds with one time each: the form that costs most to mark.
 * They measure time and memory only; how well marking does cannot be told from a rubric's own wordings.
 */

export const STATIONS = ["eye-drops", "insulin-pen", "nasal-spray", "pressurised-inhaler"] as const;
export const WORDS = 1_000;

/** 150 words a minute. */
const WORDS_A_PARAGRAPH = 50;
const SECONDS_A_PARAGRAPH = 20;
/** How often an item is said at all. */
const SAID = 0.85;

const TALK = [
  "okay so let's go on from there and take it step by step", "does that make sense so far or shall i go over it again",
  "it's been a busy morning here with the rain and everybody coming in at once", "um let me just find the leaflet so that we can look at it together",
  "you'll get used to it quite quickly most people do after a week or so", "right so the next thing i wanted to talk about is this one here",
  "i know it's a lot to take in at first so stop me whenever you like", "some people find it easier to do it at the same time as brushing their teeth",
  "and there's a number on the bag if you think of something later on", "so you know this one goes together with what you already have at home",
];
const REPLIES = [
  "okay yes that's fine", "right i see", "no i don't think so not that i know of", "um yes i think i've got that",
  "my daughter usually helps me with that sort of thing", "oh okay i didn't know that", "and what if i forget to do it one day", "that's a bit different from my old one",
];
const OPENING = "hello good morning my name is sam and i'm the pharmacist today could i check your full name and date of birth please yes it's alex example and it's the third of march nineteen seventy thank you";
const CLOSING = "is there anything else you would like to ask me before you go no i think that's all thank you okay take care bye bye now";

/** One rehearsal; the same for the same seed. */
export function rehearsal(rubric: Rubric, seed: number): string {
  const next = seededRandom(seed);
  const pick = <T>(from: readonly T[]): T => from[Math.floor(next() * from.length)]!;
  const words = OPENING.split(" ");
  const closing = CLOSING.split(" ");
  const elements = rubric.sections.flatMap(({ items }) => items).filter(() => next() < SAID).flatMap((item) => item.elements);
  elements.forEach((element, place) => {
    words.push(...said(element, rubric.scenario.label, pick));
    // Talk between the items, as much as fills the station.
    const due = OPENING.split(" ").length + ((place + 1) / elements.length) * (WORDS - closing.length - OPENING.split(" ").length);
    while (words.length < due) words.push(...pick(next() < 0.7 ? TALK : REPLIES).split(" "));
  });
  const all = [...words.slice(0, WORDS - closing.length), ...closing];
  const paragraphs: string[] = [];
  for (let start = 0; start < all.length; start += WORDS_A_PARAGRAPH) {
    const seconds = (start / WORDS_A_PARAGRAPH) * SECONDS_A_PARAGRAPH;
    paragraphs.push(`[${Math.floor(seconds / 60)}:${String(seconds % 60).padStart(2, "0")}] ${all.slice(start, start + WORDS_A_PARAGRAPH).join(" ")}`);
  }
  return `${paragraphs.join("\n\n")}\n`;
}

function said({ say, quantity: wanted }: Element, label: Rubric["scenario"]["label"], pick: <T>(from: readonly T[]) => T): string[] {
  const quantity = wanted !== undefined && "label" in wanted ? label[wanted.label]?.quantity : wanted;
  const amount = quantity === undefined || !("unit" in quantity) ? "some" : `${[quantity.value].flat()[0]!} ${quantity.unit.replaceAll("-", " ")}`;
  // A wording that is also an announcement would make two stations of one.
  const wordings = say.filter((phrase) => !/you may|you can (start|begin)/.test(phrase));
  return pick(readPhrase(pick(wordings.length > 0 ? wordings : say))).flatMap((slot) => (slot === "quantity" ? amount.split(" ") : slot === "name" ? ["sam"] : [pick(slot.words)]));
}

/** Writes `count` rehearsals, the stations in turn: C00001_eye-drops_1.txt. */
export function writeCohort(folder: string, count: number): void {
  mkdirSync(folder, { recursive: true });
  const rubrics = STATIONS.map((name) => JSON.parse(readFileSync(`dist/rubrics/${name}.json`, "utf8")) as Rubric);
  for (let place = 0; place < count; place += 1) {
    const station = place % STATIONS.length;
    const candidate = `C${String(Math.floor(place / STATIONS.length) + 1).padStart(5, "0")}`;
    writeFileSync(join(folder, `${candidate}_${STATIONS[station]}_1.txt`), rehearsal(rubrics[station]!, place + 1));
  }
}
