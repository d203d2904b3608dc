import fc from "fast-check";
import { expect, test } from "vitest";
import { stationIn, textOf } from "./reading.ts";

const sentences = (text: string): string[] => {
  const station = stationIn(text);
  return station.sentences.map(({ first, end }) => textOf(station, first, end));
};

test("sentences end at stops, not at abbreviations and decimals", () => {
  expect(sentences("Candidate: Dr. Moss gave you 2.5 mg. Take it with food, e.g. toast. Is that okay?\nPatient: Yes.")).toEqual(["Dr. Moss gave you 2.5 mg.", "Take it with food, e.g. toast.", "Is that okay?", "Yes."]);
});

test("a punctuated sentence may run over the border of two captions", () => {
  expect(sentences("WEBVTT\n\n00:01.000 --> 00:03.000\n<v Candidate>Shake it. Take the cap off the\n\n00:03.100 --> 00:05.000\n<v Candidate>inhaler and breathe out. Then press.\n")).toEqual(["Shake it.", "Take the cap off the inhaler and breathe out.", "Then press."]);
});

test("a change of label or of paragraph without punctuation starts a sentence", () => {
  expect(sentences("[0:01] Candidate: shake it well\n[0:03] Candidate: take the cap off\n[0:05] Patient: like this")).toEqual(["shake it well", "take the cap off", "like this"]);
});

const word = fc.constantFrom("okay", "Hello", "my", "name", "is", "you", "may", "begin", "time", "is", "up", "bye", "[laughs]", "<UNIN/>", ",", "two", "minutes", "left", "inhaler.", "why?", "start", "again", "I'm", "the", "pharmacist");
const line = fc.tuple(fc.constantFrom("", "Candidate: ", "Speaker 1: ", "Examiner: "), fc.array(word, { minLength: 1, maxLength: 12 })).map(([label, words]) => label + words.join(" "));

test("sentences and turns tile all words in order, whatever is said", () => {
  fc.assert(
    fc.property(fc.array(line, { minLength: 1, maxLength: 12 }), (lines) => {
      let station;
      try {
        station = stationIn(lines.join("\n"));
      } catch (error) {
        // Nothing but noise is refused by the reader, several stations by this layer.
        expect(String(error)).toMatch(/SW-(T02|T03|S01)/);
        return;
      }
      for (const tiles of [station.sentences, station.turns]) {
        expect(tiles.flatMap(({ first, end }) => [first, end])).toEqual(tiles.flatMap(({ end }, at) => [tiles[at - 1]?.end ?? 0, end]));
        expect(tiles[tiles.length - 1]?.end ?? 0).toBe(station.transcript.words.length);
        expect(tiles.every(({ first, end, confidence }) => end > first && confidence >= 0 && confidence <= 1)).toBe(true);
      }
      expect(station.start.word).toBeLessThanOrEqual(station.end.word);
      for (const { first, end, inStation } of station.sentences) if (inStation) expect(first >= station.start.word && end <= station.end.word).toBe(true);
    }),
    { numRuns: 300 },
  );
});
