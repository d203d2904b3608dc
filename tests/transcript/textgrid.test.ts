// The form is Praat's own: Boersma and Weenink, Praat manual, "TextGrid file formats". The texts are invented.
import { expect, test } from "vitest";
import { intervals, read, refusal, spoken } from "./reading.ts";

const LONG = `File type = "ooTextFile"
Object class = "TextGrid"

xmin = 0 ! the start
xmax = 10
tiers? <exists>
size = 3
item []:
    item [1]:
        class = "IntervalTier"
        name = "Candidate"
        xmin = 0
        xmax = 10
        intervals: size = 3
        intervals [1]:
            xmin = 0
            xmax = 2.5
            text = "Take ""two""! 3 times
every day"
        intervals [2]:
            xmin = 2.5
            xmax = 5
            text = ""
        intervals [3]:
            xmin = 5
            xmax = 10
            text = "bye"
    item [2]:
        class = "IntervalTier"
        name = "Patient"
        xmin = 0
        xmax = 10
        intervals: size = 1
        intervals [1]:
            xmin = 2
            xmax = 6
            text = "hi <UNIN/> <UNSURE>my friend</UNSURE>."
    item [3]:
        class = "TextTier"
        name = "bell"
        xmin = 0
        xmax = 10
        points: size = 1
        points [1]:
            number = 9.5
            mark = "[bell]"
`;
const SHORT = `File type = "ooTextFile"
Object class = "TextGrid"

0
10
<exists>
3
"IntervalTier"
"Candidate"
0
10
3
0
2.5
"Take ""two""! 3 times
every day"
2.5
5
""
5
10
"bye"
"IntervalTier"
"Patient"
0
10
1
2
6
"hi <UNIN/> <UNSURE>my friend</UNSURE>."
"TextTier"
"bell"
0
10
1
9.5
"[bell]"
`;
/** The manual's page allows any layout of the values, and comments after an exclamation mark. */
const TERSE = `"ooTextFile" "TextGrid" 0 10 <exists> 3 tiers ! 99 "no value"
"IntervalTier" named "Candidate" from 0 to 10 has 3 intervals: 0 2.5 "Take ""two""! 3 times
every day" 2.5 5 "" 5 10 "bye"
"IntervalTier" "Patient" 0 10 1 2 6 "hi <UNIN/> <UNSURE>my friend</UNSURE>." "TextTier" "bell" 0 10 1 9.5 "[bell]"`;

test.each([["long", LONG], ["short", SHORT], ["older short", SHORT.replace("ooTextFile", "ooTextFile short")], ["terse", TERSE]])("the %s form is read: tiers merge by start, a tier's name is the label", (_, text) => {
  const transcript = read(text, "x.TextGrid");
  expect(transcript.format).toBe("textgrid");
  expect(spoken(transcript)).toEqual(['Candidate: Take "two"! 3 times every day', "Patient: hi <UNIN/> my friend.", "Candidate: bye", "bell: [bell]"]);
  expect(intervals(transcript)).toEqual([[0, 2.5], [2, 6], [5, 10], [9.5, 10]]);
  expect(transcript.segments.map((segment) => segment.timing)).toEqual(["measured", "measured", "measured", "estimated"]);
});

test("tags of doubt mark the words inside them, tags of unheard speech become a word of their own", () => {
  const words = read(LONG, "x.TextGrid").words.filter((word) => word.segment === 1);
  expect(words.map(({ text, kind, doubtful }) => [text, kind, doubtful ?? false])).toEqual([
    ["hi", "word", false],
    ["<UNIN/>", "unintelligible", false],
    ["my", "word", true],
    ["friend.", "word", true],
  ]);
});

test("each word keeps its line, in a text of several lines too", () => {
  const words = read(LONG, "x.TextGrid").words;
  expect(words.find((word) => word.text === "times")?.line).toBe(18);
  expect(words.find((word) => word.text === "every")?.line).toBe(19);
});

test("voices that overlap are natural and no finding", () => {
  expect(read(SHORT, "x.TextGrid").findings.map((finding) => finding.code)).toEqual(["SW-T12"]);
});

test("a tier of single sounds is left out with a finding", () => {
  const text = TERSE.replace('"TextTier" "bell"', '"TextTier" "Candidate - phones"');
  expect(spoken(read(text, "x.TextGrid"))).toHaveLength(3);
  expect(read(text, "x.TextGrid").findings).toMatchObject([{ code: "SW-T14", line: 4 }]);
});

test.each<[string, string, number, RegExp]>([
  ["cut off", SHORT.slice(0, SHORT.indexOf('"bye"')), 21, /ends where the text of an interval was expected/],
  ["a text that is not closed", SHORT.replace('"bye"', '"bye'), 37, /not closed/],
  ["a count too small", SHORT.replace("10\n3\n0", "10\n2\n0"), 20, /the class of a tier was expected, and 5 was found/],
  ["a time that is a text", SHORT.replace("\n2.5\n5\n", '\n"x"\n5\n'), 17, /the start of an interval was expected, and the text "x" was found/],
  ["a tier of another kind", SHORT.replace('"TextTier"', '"SpectrumTier"'), 31, /must be an IntervalTier or a TextTier/],
  ["another object", SHORT.replace('"TextGrid"', '"Sound 2"'), 2, /holds a Sound 2, not a TextGrid/],
  ["values left over", `${SHORT}"more"\n`, 38, /more in the file/],
])("broken (%s): one error with its line", (_, text, line, message) => {
  expect(refusal(text, "x.TextGrid")).toMatchObject([{ code: "SW-T06", severity: "error", line, message: expect.stringMatching(message) as string }]);
});

test("a binary TextGrid is refused with the way to save it", () => {
  expect(refusal("ooBinaryFile\u0008TextGrid", "x.TextGrid")).toMatchObject([{ code: "SW-T03", mend: expect.stringContaining("text file") as string }]);
});
