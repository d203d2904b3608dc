// Invented texts; behaviour only.
import { describe, expect, test } from "vitest";
import { codes, intervals, read, spoken } from "./reading.ts";

describe("time marks", () => {
  test.each([
    ["[0:20] hello", 20],
    ["(0:20) hello", 20],
    ["[01:20] hello", 80],
    ["[1:02:03] hello", 3723],
    ["[0:20.5] hello", 20.5],
    ["[0:20,25] hello", 20.25],
    ["**[0:20]** hello", 20],
    ["[0:20]: hello", 20],
    ["0:20 hello", 20],
    ["00:00:20 hello", 20],
    ["00:00:20,500 hello", 20.5],
    ["0:20 - hello", 20],
    ["[0:20]\nhello", 20],
    ["0:20\nhello", 20],
  ])("%j starts at %d s", (line, start) => {
    const transcript = read(line);
    expect(spoken(transcript)).toEqual(["?: hello"]);
    expect(transcript.segments[0]?.start).toBe(start);
  });

  test.each(["[0:20 - 0:31] hello", "[0:20-0:31] hello", "(0:20 – 0:31) hello", "[00:00:20.000 --> 00:00:31.000]  hello", "0:20 to 0:31 hello", "[0:20 to 0:31] hello", "0:20 —  0:31 hello"])(
    "%j is a range, so its end is measured",
    (line) => {
      const transcript = read(line);
      expect(intervals(transcript)).toEqual([[20, 31]]);
      expect(transcript.segments[0]?.timing).toBe("measured");
      expect(spoken(transcript)).toEqual(["?: hello"]);
    },
  );

  test("a stretch without an end ends at the next mark, the last one at the pace of the file, which is told", () => {
    // 20 syllables in 10 s, then 4 syllables: 2 s.
    const transcript = read("[0:00] one two three four five six eight nine ten one two three four five six eight nine ten one two\n[0:10] one two three four\n");
    expect(intervals(transcript)).toEqual([[0, 10], [10, 12]]);
    expect(transcript.segments.map((segment) => segment.timing)).toEqual(["estimated", "estimated"]);
    expect(transcript.findings).toMatchObject([{ code: "SW-T12", line: 2, severity: "info" }]);
  });

  test("a mark with nothing below it ends the stretch before it", () => {
    expect(intervals(read("[0:00] hello there\n[0:04]\n"))).toEqual([[0, 4]]);
  });

  test("one mark heads a paragraph of many sentences by several voices", () => {
    const transcript = read("[0:00]\nHello, I'm the pharmacist. Hi. Have you used\none before? No never.\n\nOkay.\n\n[0:20]\nShake it.");
    expect(spoken(transcript)).toEqual(["?: Hello, I'm the pharmacist. Hi. Have you used one before? No never. Okay.", "?: Shake it."]);
    expect(transcript.words[8]).toMatchObject({ text: "one", line: 3 });
  });

  test("a mark in the middle of a paragraph starts a new stretch of the same speaker", () => {
    const transcript = read("[0:00] Candidate: shake it well [0:05] and then breathe out (0:08) slowly\n[0:10] Patient: okay");
    expect(spoken(transcript)).toEqual(["Candidate: shake it well", "Candidate: and then breathe out", "Candidate: slowly", "Patient: okay"]);
    expect(intervals(transcript).map(([start]) => start)).toEqual([0, 5, 8, 10]);
  });

  test("a time inside a transcriber's mark is no time mark", () => {
    expect(spoken(read("[0:00] take it [inaudible 0:32] daily\n[0:40] ok"))).toEqual(["?: take it [inaudible 0:32] daily", "?: ok"]);
  });
});

describe("clock times and ratios that somebody spoke of", () => {
  test.each(["8:30 in the morning", "8:30 is when I take it", "1:10 is the dilution"])("%j in a text without marks stays speech", (line) => {
    const transcript = read(`Hello there.\n${line}.\nGoodbye now.`);
    expect(transcript.timing).toBe("none");
    expect(transcript.words.map((word) => word.text).join(" ")).toBe(`Hello there. ${line}. Goodbye now.`);
  });

  test("a line that begins with one is told, with the way to mend it", () => {
    expect(read("I take two.\n8:30 is when I take it.\n").findings).toMatchObject([
      { code: "SW-T15" },
      { code: "SW-T17", line: 2, message: expect.stringContaining("8:30") as string, mend: expect.stringContaining("[0:20]") as string },
    ]);
  });

  test("beside bracketed marks a bare clock time stays speech", () => {
    const transcript = read("[0:00] when do you take it\n8:30 is when I take it\n[0:40] good\n[1:00] bye");
    expect(spoken(transcript)[0]).toBe("?: when do you take it 8:30 is when I take it");
    expect(codes(transcript)).toContain("SW-T17");
  });

  test("among bare marks the one that does not fit the running clock stays speech", () => {
    const transcript = read("0:00 okay so hello\n0:20 right I will show you\n8:30 is when I take it\n0:40 that's good\n1:00 bye");
    expect(intervals(transcript).map(([start]) => start)).toEqual([0, 20, 40, 60]);
    expect(spoken(transcript)[1]).toBe("?: right I will show you 8:30 is when I take it");
  });

  test("bare marks of minutes are believed when they run through the text from its first line", () => {
    const transcript = read("12:10 hello there\n12:25 yes please\n12:40 shake it");
    expect(intervals(transcript).map(([start]) => start)).toEqual([730, 745, 760]);
  });

  test("a clock time in round brackets that does not fit between the marks stays speech", () => {
    expect(spoken(read("[0:00] I take it twice (8:30) daily\n[0:10] ok"))).toEqual(["?: I take it twice (8:30) daily", "?: ok"]);
  });
});

describe("labels", () => {
  test.each([
    ["[0:00] ANNA: hello\n[0:05] BEN: hi\n[0:09] ANNA: bye\n[0:11] BEN: bye", "time, then label"],
    ["ANNA [0:00]: hello\nBEN [0:05]: hi\nANNA [0:09]: bye\nBEN [0:11]: bye", "label, then time, then colon"],
    ["ANNA (0:00)\nhello\n\nBEN (0:05)\nhi\n\nANNA (0:09)\nbye\n\nBEN (0:11)\nbye", "label and time on a line of their own"],
    ["ANNA  0:00\nhello\n\nBEN  0:05\nhi\n\nANNA  0:09\nbye\n\nBEN  0:11\nbye", "label and bare time on a line of their own"],
    ["0:00 ANNA\nhello\n\n0:05 BEN\nhi\n\n0:09 ANNA\nbye\n\n0:11 BEN\nbye", "time and label on a line of their own"],
    ["**ANNA** [0:00]: hello\n**BEN** [0:05]: hi\n**ANNA** [0:09]: bye\n**BEN** [0:11]: bye", "bold label, then time"],
    ["[0:00] **ANNA:** hello\n[0:05] **BEN:** hi\n[0:09] **ANNA:** bye\n[0:11] **BEN:** bye", "time, then bold label"],
    ["**[0:00] ANNA:** hello\n**[0:05] BEN:** hi\n**[0:09] ANNA:** bye\n**[0:11] BEN:** bye", "time and label in bold"],
  ])("%j are read (%s)", (text) => {
    const transcript = read(text);
    expect(spoken(transcript)).toEqual(["ANNA: hello", "BEN: hi", "ANNA: bye", "BEN: bye"]);
    expect(intervals(transcript).map(([start]) => start)).toEqual([0, 5, 9, 11]);
  });

  test.each(["Anna: hello\nBen: hi\nAnna: bye", "**Anna:** hello\n\n**Ben:** hi\n\n**Anna**: bye", "anna: hello\nben: hi\nanna: bye\nben: bye", "Speaker 1: hello\nSpeaker 2: hi", "P: hello\nC: hi\nP: ok\nC: bye", "[Speaker 1] hello\n[Speaker 2] hi"])(
    "%j are labels without times",
    (text) => {
      expect(read(text).segments.every((segment) => segment.speaker !== null)).toBe(true);
      expect(read(text).words.map((word) => word.text).join(" ")).not.toMatch(/[:*]/);
    },
  );

  test.each(["Remember: shake it", "step one: prime it", "Step two: breathe out", "Note: only once", "First: take the cap off", "So: that is all", "The dose: two puffs", "Yes: always", "And then: hold", "Careful: it is cold"])(
    "%j is speech, in a text with labels and in one without",
    (line) => {
      expect(spoken(read(`Candidate: hello\n${line}\nPatient: ok`))[0]).toBe(`Candidate: hello ${line}`);
      expect(read(`hello there\n${line}\nand so on\n`).segments.every((segment) => segment.speaker === null)).toBe(true);
    },
  );

  test("a name that stands once in a text with few labels stays speech, and that is told", () => {
    const transcript = read("hello there my friend\nMouthpiece: keep it clean\nand wash it\nevery week\n");
    expect(transcript.segments.every((segment) => segment.speaker === null)).toBe(true);
    expect(codes(transcript)).toContain("SW-T17");
  });

  test("under one time each label starts a stretch, and they share its interval by syllables", () => {
    const transcript = read("[0:00]\nCandidate: have you used one before\nPatient: no\n[0:07]\nCandidate: okay");
    expect(spoken(transcript)).toEqual(["Candidate: have you used one before", "Patient: no", "Candidate: okay"]);
    // Six syllables and one, in seven seconds.
    expect(intervals(transcript).slice(0, 2)).toEqual([[0, 6], [6, 7]]);
  });

  test("a paragraph without a label goes to the speaker before it, and that is told", () => {
    const transcript = read("Candidate: shake it.\n\nThen breathe out.\n\nPatient: ok");
    expect(spoken(transcript)).toEqual(["Candidate: shake it.", "Candidate: Then breathe out.", "Patient: ok"]);
    expect(transcript.findings).toMatchObject([{ code: "SW-T15" }, { code: "SW-T17", line: 3 }]);
  });

  test("a time without a label starts an unlabelled stretch even in a text with labels", () => {
    expect(spoken(read("[0:00] Candidate: hi\n[0:05] yes please\n[0:09] Candidate: ok"))).toEqual(["Candidate: hi", "?: yes please", "Candidate: ok"]);
  });

  test("a dash at the head of a line starts a new stretch", () => {
    expect(spoken(read("- Have you used one?\n- No, never.\n- Okay."))).toEqual(["?: Have you used one?", "?: No, never.", "?: Okay."]);
  });
});

test("a noise in brackets between two paragraphs belongs to nobody, and the speaker goes on behind it", () => {
  expect(spoken(read("Candidate: shake it.\n\n(bell rings)\n\nThen breathe out.\n\nPatient: ok"))).toEqual(["Candidate: shake it.", "?: (bell rings)", "Candidate: Then breathe out.", "Patient: ok"]);
  expect(spoken(read("[0:00]\nCandidate: shake it.\n\n[bell]\n\nThen out.\n[0:10]\nPatient: ok"))).toEqual(["Candidate: shake it.", "?: [bell]", "Candidate: Then out.", "Patient: ok"]);
});

test.each([
  ["label, start, end, text", "Anna\t0:00\t0:04\thello\nBen\t0:04\t0:06\thi"],
  ["start, end, label, text", "0:00\t0:04\tAnna\thello\n0:04\t0:06\tBen\thi"],
  ["seconds", "0.000000\t4.000000\tAnna\thello\n4.000000\t6.000000\tBen\thi"],
])("columns parted by tabs are read: %s", (_, text) => {
  expect(spoken(read(text))).toEqual(["Anna: hello", "Ben: hi"]);
  expect(intervals(read(text))).toEqual([[0, 4], [4, 6]]);
});

describe("headings and front matter", () => {
  const text = "---\ntitle: \"Rehearsal 2\"\nTopics:\n  - eye drops\n  - storage\n---\n# Station 3\n[0:00] hello\n--- debrief ---\n[0:09] thanks\n=====\n**End of file**\n";

  test("are no speech and are kept", () => {
    const transcript = read(text);
    expect(spoken(transcript)).toEqual(["?: hello", "?: thanks"]);
    expect(transcript.frontMatter).toEqual({ title: "Rehearsal 2", topics: "eye drops, storage" });
    expect(transcript.headings).toEqual([
      { text: "Station 3", line: 7, beforeWord: 0 },
      { text: "debrief", line: 9, beforeWord: 1 },
      { text: "=====", line: 11, beforeWord: 2 },
      { text: "End of file", line: 12, beforeWord: 2 },
    ]);
  });

  test("key and value lines before the first speech are front matter, a title is a heading, and a guess is told", () => {
    const transcript = read("Rehearsal of the nasal spray\nDate: 3 May\nCandidate: 14\n\n[0:00] Candidate: hello\n[0:05] Patient: hi");
    expect(transcript.frontMatter).toEqual({ date: "3 May", candidate: "14" });
    expect(transcript.headings.map((heading) => heading.text)).toEqual(["Rehearsal of the nasal spray"]);
    expect(codes(transcript)).toContain("SW-T17");
    expect(spoken(transcript)).toEqual(["Candidate: hello", "Patient: hi"]);
  });

  test("a sentence before the first time is speech", () => {
    const transcript = read("Right, can you hear me?\n[0:10] hello\n[0:20] bye");
    expect(spoken(transcript)[0]).toBe("?: Right, can you hear me?");
    expect(transcript.segments[0]?.end).toBe(10);
    expect(transcript.segments[0]?.timing).toBe("estimated");
  });

  test("an announcer's label before the first time is speech", () => {
    expect(spoken(read("Announcer: You may begin.\n[0:02] Candidate: hello\n[0:05] Patient: hi"))[0]).toBe("Announcer: You may begin.");
  });
});

describe("text without times and labels", () => {
  test("a paragraph is a stretch", () => {
    expect(spoken(read("Hello there. I am\nthe pharmacist.\n\nHi."))).toEqual(["?: Hello there. I am the pharmacist.", "?: Hi."]);
  });

  test("lines that each end a sentence are stretches, wrapped lines are one", () => {
    expect(spoken(read("Hello there.\nHi.\nShake it well.\n"))).toHaveLength(3);
    expect(spoken(read("so hello there i am the\npharmacist and this is\nyour spray\n"))).toHaveLength(1);
  });
});

describe("a timed line without a label", () => {
  const talk = (again: string) => ["ANN: Hello.", "BEN: Hi.", "ANN: One.", "BEN: Two.", "ANN: Three.", "BEN: Four.", "ANN: Five.", again, "Six."].map((says, at) => `[0:${String(3 * at).padStart(2, "0")}] ${says}`).join("\n");
  test("is the speaker's before it where labels stand at changes of speaker only, and that is told", () => {
    const transcript = read(talk("BEN: Yes."));
    expect(spoken(transcript).at(-1)).toBe("BEN: Six.");
    expect(codes(transcript)).toContain("SW-T17");
  });

  test("may be anybody's where neighbours have one label", () => expect(spoken(read(talk("ANN: Yes."))).at(-1)).toBe("?: Six."));
});
