// Outside check: the example files of the W3C text (WebVTT: The Web Video Text Tracks Format, sections 1.1 to 1.6 and
// the newer drafts of them), read cue by cue beside `webvtt-parser` (W3C's own, CC0), an independent implementation
// of section 6. Cue times, markup, identifiers and settings are the examples'; names of living people are replaced.
import { createRequire } from "node:module";
import { describe, expect, test } from "vitest";
import { WebVTTParser, type WebVttNode } from "webvtt-parser";
import { codes, read } from "./reading.ts";

/** HTML's named character references, as the second parser ships them; its built-in few lack the semicolon. */
const ENTITIES = createRequire(import.meta.url)("webvtt-parser/html-entities.json") as Record<string, string>;

const EXAMPLES: Record<string, string> = {
  "1.1 a simple caption file: voices that overlap": `WEBVTT

00:11.000 --> 00:13.000
<v Presenter>We are in New York City

00:13.000 --> 00:16.000
<v Presenter>We're actually at the hotel, just down the street

00:27.000 --> 00:30.000
<v Presenter>And I want to do a follow-up on the last conversation we did.

00:30.000 --> 00:31.500 align:right size:50%
<v Presenter>When we e-mailed—

00:30.500 --> 00:32.500 align:left size:50%
<v Guest>Didn't we talk about enough in that conversation?

00:32.000 --> 00:35.500 align:right size:50%
<v Presenter>No! No no no no; 'cos 'cos obviously 'cos

00:32.500 --> 00:33.500 align:left size:50%
<v Guest><i>Laughs</i>

00:35.500 --> 00:38.000
<v Presenter>You know I'm so excited my glasses are falling off here.
`,
  "1.2 cues with multiple lines": `WEBVTT

00:01.000 --> 00:04.000
Never drink liquid nitrogen.

00:05.000 --> 00:09.000
— It will perforate your stomach.
— You could die.

00:10.000 --> 00:14.000
The Organisation for Sample Public Service Announcements accepts no liability for the content of this advertisement, or for the consequences of any actions taken on the basis of the information provided.
`,
  "1.3 styling: style blocks and comments between them": `WEBVTT

STYLE
::cue {
  background-image: linear-gradient(to bottom, dimgray, lightgray);
  color: papayawhip;
}
/* Style blocks cannot use blank lines nor "dash dash greater than" */

NOTE comment blocks can be used between style blocks.

STYLE
::cue(b) {
  color: peachpuff;
}

hello
00:00:00.000 --> 00:00:10.000
Hello <b>world</b>.

NOTE style blocks cannot appear after the first cue.
`,
  "1.4 other features: identifiers": `WEBVTT

test
00:00.000 --> 00:02.000
This is a test.

123
00:00.000 --> 00:02.000
That's an, an, that's an L!

crédit de transcription
00:04.000 --> 00:05.000
Transcrit par Célestes™
`,
  "1.4 other features: classes and languages": `WEBVTT

04:02.500 --> 04:05.000
J'ai commencé le basket à l'âge de 13, 14 ans

04:05.001 --> 04:07.800
Sur les <i.foreignphrase><lang en>playground</lang></i>, ici à Montpellier
`,
  "1.4 other features: voice spans with classes": `WEBVTT

00:00.000 --> 00:02.000
<v.first.loud Esme>It's a blue apple tree!

00:02.000 --> 00:04.000
<v Mary>No way!

00:04.000 --> 00:06.000
<v Esme>Hee!</v> <i>laughter</i>

00:06.000 --> 00:08.000
<v.loud Mary>That's awesome!
`,
  "1.4 other features: positions": `WEBVTT

00:00:00.000 --> 00:00:04.000 position:10%,line-left align:left size:35%
Where did he go?

00:00:03.000 --> 00:00:06.500 position:90% align:right size:35%
I think he went down this lane.

00:00:04.000 --> 00:00:06.500 position:45%,line-right align:center size:35%
What are you waiting for?
`,
  "1.4 other features: two regions that roll up": `WEBVTT

REGION
id:fred
width:40%
lines:3
regionanchor:0%,100%
viewportanchor:10%,90%
scroll:up

REGION
id:bill
width:40%
lines:3
regionanchor:100%,100%
viewportanchor:90%,90%
scroll:up

00:00:00.000 --> 00:00:20.000 region:fred align:left
<v Fred>Hi, my name is Fred

00:00:02.500 --> 00:00:22.500 region:bill align:right
<v Bill>Hi, I'm Bill

00:00:05.000 --> 00:00:25.000 region:fred align:left
<v Fred>Would you like to get a coffee?

00:00:07.500 --> 00:00:27.500 region:bill align:right
<v Bill>Sure! I've only had one today.

00:00:10.000 --> 00:00:30.000 region:fred align:left
<v Fred>This is my fourth!

00:00:12.500 --> 00:00:32.500 region:fred align:left
<v Fred>OK, let's go.
`,
  "1.5 comments": `WEBVTT

NOTE
This file was written by Jill. I hope
you enjoy reading it. Some things to
bear in mind:
- I was lip-reading, so the cues may
not be 100% accurate
- I didn't pay too close attention to
when the cues should start or end.

00:01.000 --> 00:04.000
Never drink liquid nitrogen.

NOTE check next cue

00:05.000 --> 00:09.000
— It will perforate your stomach.
— You could die.

NOTE end of file
`,
  "1.6 chapters": `WEBVTT

NOTE
This is from a talk about WebVTT.

Slide 1
00:00:00.000 --> 00:00:10.700
Title Slide

Slide 2
00:00:10.700 --> 00:00:47.600
Introduction by the chair

Slide 3
00:00:47.600 --> 00:01:50.100
Impact of Captions on the Web
`,
  "4.2.2 cue components: inline times, ruby, escapes": `WEBVTT

00:00.000 --> 00:05.000
Take <00:01.000>two <00:02.500><c.loud>slow</c> puffs &amp; wait &lt;not less&gt; now

00:05.000 --> 00:06.000
<ruby>base<rt>annotation</rt></ruby> text&nbsp;here
`,
};

interface PlainCue {
  start: number;
  end: number;
  /** "voice|word" for each word. */
  words: string[];
}

/** A dash before each voice's line is a sign of dialogue: we start a stretch there, the second parser keeps it as text. */
const withoutDialogueDash = (text: string): string => text.replace(/^— /gm, "");

function bySecondParser(text: string): PlainCue[] {
  return new WebVTTParser(ENTITIES).parse(text).cues.map((cue) => {
    const runs: { voice: string; text: string }[] = [];
    const walk = (nodes: WebVttNode[], voice: string): void => {
      for (const node of nodes) {
        if (node.type === "text") runs.push({ voice, text: String(node.value) });
        else walk(node.children ?? [], node.name === "v" ? String(node.value).trim() : voice);
      }
    };
    walk(cue.tree.children, "");
    // Text nodes of one voice run on: "<i>one</i>, two" is two words, not three.
    const joined: typeof runs = [];
    for (const run of runs) {
      const last = joined.at(-1);
      if (last !== undefined && last.voice === run.voice) last.text += run.text;
      else joined.push({ ...run });
    }
    const words = joined.flatMap((run) => withoutDialogueDash(run.text).split(/\s+/).filter((word) => word !== "").map((word) => `${run.voice}|${word}`));
    return { start: cue.startTime, end: cue.endTime, words };
  });
}

/** Our stretches put back together to cues: those that touch within one cue interval of the second parser. */
function byUs(text: string, cues: readonly PlainCue[]): PlainCue[] {
  const transcript = read(text, "example.vtt");
  const left = [...transcript.segments];
  return cues.map((cue) => {
    const own: typeof left = [];
    let count = 0;
    while (left.length > 0 && count < cue.words.length) {
      const segment = left.shift();
      if (segment === undefined) break;
      own.push(segment);
      count += segment.endWord - segment.firstWord;
    }
    return {
      start: own[0]?.start ?? Number.NaN,
      end: own.at(-1)?.end ?? Number.NaN,
      words: own.flatMap((segment) => transcript.words.slice(segment.firstWord, segment.endWord).map((word) => `${segment.speaker ?? ""}|${word.text}`)),
    };
  });
}

describe.each(Object.entries(EXAMPLES))("W3C example %s", (name, text) => {
  test("gives the second parser's cues: same times, same words, same voices", () => {
    const cues = bySecondParser(text);
    expect(cues.length).toBeGreaterThan(0);
    const own = byUs(text, cues);
    const ends = (list: PlainCue[]) => (name.includes("roll up") ? list.map(({ start, words }) => ({ start, words })) : list);
    expect(ends(own)).toEqual(ends(cues));
    expect(read(text, "x.vtt").words).toHaveLength(cues.reduce((sum, cue) => sum + cue.words.length, 0));
  });

  test("is read without a warning", () => {
    const warnings = read(text, "example.vtt").findings.filter((finding) => finding.severity !== "info");
    // Captions that roll up overlap by design; why that is told is tested below.
    expect(warnings.map((finding) => finding.code)).toEqual(name.includes("roll up") ? ["SW-T11"] : []);
  });
});

describe("where we differ from the second parser, and why", () => {
  const ours = (text: string) => read(text, "x.vtt").words.map((word) => word.text);
  const theirs = (text: string) => bySecondParser(text).flatMap((cue) => cue.words.map((word) => word.split("|")[1]));

  test("a cue whose time cannot be read: section 6.1 drops it, we keep its words and say so, since words earn marks", () => {
    const text = "WEBVTT\n\n00:01.000 --> 00:02.000\none\n\n00:XX.000 --> 00:04.000\ntwo\n\n00:05.000 --> 00:06.000\nthree\n";
    expect(theirs(text)).toEqual(["one", "three"]);
    expect(ours(text)).toEqual(["one", "two", "three"]);
    expect(codes(read(text, "x.vtt"))).toContain("SW-T13");
  });

  test("a time written with a comma or one digit: not a time to section 6.4, read by us with a finding", () => {
    const text = "WEBVTT\n\n0:01,5 --> 0:02,5\none\n";
    expect(theirs(text)).toEqual([]);
    expect(ours(text)).toEqual(["one"]);
    expect(read(text, "x.vtt").segments[0]).toMatchObject({ start: 1.5, end: 2.5 });
    expect(codes(read(text, "x.vtt"))).toContain("SW-T16");
  });

  test("text outside a cue: dropped by section 6.1, by us read as part of the cue before it, with a finding", () => {
    const text = "WEBVTT\n\n00:01.000 --> 00:02.000\none\n\ntwo words\n";
    expect(theirs(text)).toEqual(["one"]);
    expect(ours(text)).toEqual(["one", "two", "words"]);
    expect(read(text, "x.vtt").words[1]?.line).toBe(6);
    expect(codes(read(text, "x.vtt"))).toContain("SW-T16");
  });

  test("a '<' that opens no tag swallows the text behind it by section 6.4; we keep it, with a finding", () => {
    const text = "WEBVTT\n\n00:01.000 --> 00:02.000\ndose < 5 mg now\n";
    expect(theirs(text)).toEqual(["dose"]);
    expect(ours(text)).toEqual(["dose", "<", "5", "mg", "now"]);
    expect(codes(read(text, "x.vtt"))).toContain("SW-T16");
  });

  test("a blank line missing before a numbered cue: section 6.1 reads the number as text, we know it for the identifier", () => {
    const text = "WEBVTT\n\n1\n00:01.000 --> 00:02.000\none\n2\n00:02.000 --> 00:03.000\ntwo\n";
    expect(theirs(text)).toEqual(["one", "2", "two"]);
    expect(ours(text)).toEqual(["one", "two"]);
    expect(codes(read(text, "x.vtt"))).toContain("SW-T16");
  });

  test("cues out of order: both sort by start, we tell it", () => {
    const text = "WEBVTT\n\n00:05.000 --> 00:06.000\nlate\n\n00:01.000 --> 00:02.000\nearly\n";
    expect(theirs(text)).toEqual(["early", "late"]);
    expect(ours(text)).toEqual(["early", "late"]);
    expect(read(text, "x.vtt").findings).toMatchObject([{ code: "SW-T10", line: 6 }]);
  });

  test("a cue that stays on the screen while its speaker goes on: we end it where the next begins, since one person says one thing at a time", () => {
    const text = EXAMPLES["1.4 other features: two regions that roll up"] ?? "";
    expect(bySecondParser(text).map((cue) => cue.end)).toEqual([20, 22.5, 25, 27.5, 30, 32.5]);
    expect(read(text, "x.vtt").segments.map((segment) => segment.end)).toEqual([5, 7.5, 10, 27.5, 12.5, 32.5]);
    expect(codes(read(text, "x.vtt"))).toContain("SW-T11");
  });

  test("a named character reference that is not in our table stays as written, with a finding", () => {
    const text = "WEBVTT\n\n00:01.000 --> 00:02.000\ncaf&eacute; &thetasym;\n";
    expect(theirs(text)).toEqual(["café", "ϑ"]);
    expect(ours(text)).toEqual(["café", "&thetasym;"]);
    expect(codes(read(text, "x.vtt"))).toContain("SW-T16");
  });
});
