import { describe, expect, test } from "vitest";
import { timeFigures } from "../../../src/scoring/time/figures.ts";
import { stationOf, talk } from "./station-of.ts";

const TIMES = { limit: 100, target: 80 };

describe("time used, pace and share, worked by hand", () => {
  // Candidate 60 words in 20 s and 30 words in 10 s; patient 10 words in 10 s; 20 s of silence between: 60 s in all.
  const station = stationOf([
    { role: "candidate", text: talk(60), from: 10, to: 30 },
    { role: "patient", text: talk(10), from: 30, to: 40 },
    { role: "candidate", text: talk(30), from: 60, to: 70 },
  ]);
  const time = timeFigures(station, TIMES);

  test("the station runs from its first word to its last, not from the start of the recording", () => {
    expect(time.used).toEqual({ value: 60, estimated: false });
  });
  test("overall pace is the candidate's words over all of it: 90 words in 60 s", () => {
    expect(time.wordsPerMinute).toEqual({ value: 90, estimated: false });
  });
  test("talking pace is over the candidate's own 30 s: 180 a minute", () => {
    expect(time.articulation).toEqual({ value: 180, estimated: false });
  });
  test("words by role and the patient's share of them", () => {
    expect([time.candidateWords, time.patientWords, time.patientShare]).toEqual([90, 10, 0.1]);
  });
  test("the curve has windows of 30 s from the station's start, silence included", () => {
    // 10 to 40 s: 60 words in half a minute; 40 to 70 s: 30 words.
    expect(time.curve).toEqual([{ from: 10, to: 40, wordsPerMinute: 120 }, { from: 40, to: 70, wordsPerMinute: 60 }]);
  });
  test("under target and limit is negative, over is positive", () => {
    expect(time.overTarget).toEqual({ value: -20, estimated: false });
    expect(timeFigures(station, { limit: 45, target: 40 }).overLimit).toEqual({ value: 15, estimated: false });
  });
});

describe("what counts as a word of whom", () => {
  test("noises, unheard words, lone dashes and other people's words are no words of the candidate", () => {
    const time = timeFigures(
      stationOf([
        { role: "examiner", text: "You may begin now please", from: 0, to: 2 },
        { role: "candidate", text: "shake – it [laughs] [inaudible] well", from: 2, to: 5 },
        { role: "unknown", text: "mm hm", from: 5, to: 6 },
        { role: "patient", text: "why", from: 6, to: 7 },
      ]),
      TIMES,
    );
    expect([time.candidateWords, time.patientWords, time.patientShare]).toEqual([3, 1, 0.25]);
  });

  test("what could not be heard took talking time: 10 words, 10 unheard, 10 s are 60 words a minute", () => {
    const text = [...Array(10).fill("shake"), ...Array(10).fill("[inaudible]")].join(" ");
    expect(timeFigures(stationOf([{ role: "candidate", text, from: 0, to: 10 }]), TIMES).articulation).toEqual({ value: 60, estimated: false });
  });

  test("a silence inside one segment is no talking, a breath is: 20 words in 10 s, the second half 5 s or 0.5 s late", () => {
    const broken = (late: number) => {
      const station = stationOf([{ role: "candidate", text: talk(20), from: 0, to: 10 }]);
      for (const word of station.transcript.words.slice(10)) {
        word.start! += late;
        word.end! += late;
      }
      return timeFigures(station, TIMES).articulation;
    };
    expect(broken(5)).toEqual({ value: 120, estimated: false });
    expect(broken(0.5)).toEqual({ value: 114.3, estimated: false });
  });

  test("a stretch that is left out of the station is left out of the count", () => {
    const excluded = [{ first: 0, end: 5 }];
    expect(timeFigures(stationOf([{ role: "candidate", text: talk(15), from: 0, to: 15 }], { excluded }), TIMES).candidateWords).toBe(10);
  });

  test("nobody spoke for the patient: the share is nought; nobody spoke at all: there is none", () => {
    expect(timeFigures(stationOf([{ role: "candidate", text: "hello", from: 0, to: 1 }]), TIMES).patientShare).toBe(0);
    expect(timeFigures(stationOf([{ role: "examiner", text: "hello", from: 0, to: 1 }]), TIMES).patientShare).toBeNull();
  });
});

describe("without times", () => {
  const time = timeFigures(stationOf([{ role: "candidate", text: talk(120) }, { role: "patient", text: "Thank you um" }]), TIMES);

  test.each(["used", "overTarget", "overLimit", "wordsPerMinute", "articulation", "pauses"] as const)("%s is not measurable, and says why", (figure) => {
    expect(time[figure]).toEqual({ value: null, why: "the transcript has no times" });
  });
  test("nothing can be late, and there is no curve", () => expect([time.afterLimit, time.curve]).toEqual([null, []]));
  test("what needs no times is still told", () => {
    expect([time.candidateWords, time.patientShare, time.fillers.count]).toEqual([120, 0.024, 0]);
    expect(time.readingGrade.value).not.toBeNull();
  });
});

test("interpolated times make estimated figures", () => {
  const time = timeFigures(stationOf([{ role: "candidate", text: talk(30), from: 0, to: 10, timing: "estimated" }], { timing: "segment" }), TIMES);
  expect([time.used, time.wordsPerMinute, time.articulation]).toEqual([{ value: 10, estimated: true }, { value: 180, estimated: true }, { value: 180, estimated: true }]);
});

describe("after the limit", () => {
  // One word a second from second 10; a limit of 100 s ends at second 110.
  const station = stationOf([
    { role: "candidate", text: talk(95), from: 10, to: 105 },
    { role: "patient", text: talk(10), from: 105, to: 115 },
    { role: "candidate", text: talk(20), from: 115, to: 135 },
  ]);

  test("counts from the station's start, the candidate's words only", () => {
    const late = timeFigures(station, TIMES).afterLimit!;
    expect(late.words).toBe(20);
    expect(late.evidence).toHaveLength(1);
    expect(late.evidence[0]).toMatchObject({ first: 105, end: 125, start: 115, endTime: 135, line: 3, role: "candidate", estimated: false });
  });

  test("a word that starts on the limit is late, the one before is not", () => {
    const late = timeFigures(station, { limit: 94, target: 80 }).afterLimit!;
    expect(late.words).toBe(21);
    expect(late.evidence.map(({ first, end }) => [first, end])).toEqual([[94, 95], [105, 125]]);
  });

  test("nothing late is null", () => expect(timeFigures(station, { limit: 400, target: 300 }).afterLimit).toBeNull());
});

describe("wording", () => {
  test("fillers are the candidate's, per hundred of the candidate's words, commonest first", () => {
    const time = timeFigures(
      stationOf([
        { role: "candidate", text: `So um shake it um well, you know, ${talk(42)}`, from: 0, to: 20 },
        { role: "patient", text: "um um um um", from: 20, to: 22 },
      ]),
      TIMES,
    );
    expect(time.candidateWords).toBe(50);
    expect(time.fillers).toEqual({ count: 3, perHundredWords: 6, commonest: [{ word: "um", count: 2 }, { word: "you know", count: 1 }] });
  });

  test("technical words come with their place and plain words, unless the patient used them first", () => {
    const said = { role: "candidate", text: "Watch for hypoglycaemia and tremor on a long drive home", from: 10, to: 20 } as const;
    const found = (before: string) => timeFigures(stationOf([{ role: "patient", text: before, from: 0, to: 5 }, said]), TIMES).technicalWords;
    expect(found("what can go wrong").map(({ word, plain, evidence }) => [word, plain, evidence.quote])).toEqual([
      ["hypoglycaemia", "low blood sugar", "hypoglycaemia"],
      ["tremor", "shaking", "tremor"],
    ]);
    expect(found("I had tremor before").map(({ word }) => word)).toEqual(["hypoglycaemia"]);
  });

  test("the reading grade is the formula's: 100 words of one syllable in ten sentences, 0.39 * 10 + 11.8 - 15.59 = 0.1", () => {
    expect(timeFigures(stationOf([{ role: "candidate", text: talk(100) }]), TIMES).readingGrade).toEqual({ value: 0.1, estimated: false });
  });

  test.each([
    ["without full stops", talk(120).replaceAll(".", ""), "the transcript is not punctuated well enough to count sentences"],
    ["cut to shreds", talk(120).replaceAll("shake ", "shake. "), "the transcript is not punctuated well enough to count sentences"],
    ["of too few words", talk(99), "fewer than 100 words of the candidate"],
  ])("%s there is no reading grade", (_, text, why) => {
    expect(timeFigures(stationOf([{ role: "candidate", text }]), TIMES).readingGrade).toEqual({ value: null, why });
  });
});

describe("the curve of the pace", () => {
  const rates = (seconds: number) => timeFigures(stationOf([{ role: "candidate", text: talk(seconds * 2), from: 0, to: seconds }]), TIMES).curve.map(({ from, to, wordsPerMinute }) => [from, to, wordsPerMinute]);

  test("has a point for every half minute from the start, and for a last part of ten seconds", () => {
    expect(rates(70)).toEqual([[0, 30, 120], [30, 60, 120], [60, 70, 120]]);
  });

  test("leaves out a last part that is shorter: it says more of its edges than of the pace", () => {
    expect(rates(69)).toEqual([[0, 30, 120], [30, 60, 120]]);
  });

  test("has one point at least", () => {
    expect(rates(8)).toEqual([[0, 8, 120]]);
  });
});
