// Invented stations; behaviour only.
import { describe, expect, test } from "vitest";
import { ProblemError } from "../../src/problem/problem.ts";
import { bare, inside, roleOf, stationIn, textOf } from "./reading.ts";

const HELLO = "Hello, my name is Iris, I'm the pharmacist. How can I help you?";
const TALK = `Hi, I've got this cream for my hands and I don't know how much to use. Okay, no problem. Have you used a steroid cream before? No, never. Are you allergic to anything? Not that I know of. Use it twice a day, and put it on thinly. One fingertip is enough for two hands. Wash your hands before and after, and don't use it for more than a week. Will it thin my skin? Not if you only use it for a week. Can you tell me how you'll use it? Twice a day, a thin layer, for a week. That's right. Any other questions? No, I think that's everything.`;
const BYE = "Thank you. You're welcome, take care. Bye.";
const STATION = `${HELLO} ${TALK} ${BYE}`;

test("the station starts after the announcement that lets the candidate begin, not at reading time", () => {
  const station = stationIn(`Station three. You have two minutes reading time. You may now begin. ${STATION}`);
  expect(inside(station)).toBe(STATION);
  expect(station.start.reason).toMatch(/'You may now begin' \(line 1\)/);
  expect(roleOf(station, "two minutes reading")).toBe("announcer");
});

test("speech-to-text without punctuation does not hide the announcement", () => {
  const station = stationIn(bare(`station three you have two minutes reading time you may now begin ${STATION}`));
  expect(inside(station)).toBe(bare(STATION));
});

test("a misheard letter does not hide it either", () => {
  const station = stationIn(`You have two minutes reeding time. You may now bagin. You may now procead. ${STATION}`);
  expect(inside(station)).toBe(STATION);
});

test("without an announcement the candidate's introduction starts it, and the leave-taking ends it", () => {
  const station = stationIn(STATION);
  expect(inside(station)).toBe(STATION);
  expect(station.start.reason).toContain("introduction");
  expect(station.end.reason).toContain("leave-taking");
});

test("set-up talk before is left out", () => {
  const station = stationIn(`Is this thing on? Yeah, we're recording now. Okay, I'll be the patient, whenever you're ready. ${STATION}`);
  expect(inside(station)).toBe(STATION);
  expect(station.start.reason).toContain("ready");
});

test("set-up talk by the voice that then plays the patient is left out too", () => {
  const station = stationIn(`[0:01] Speaker 1: I've set it going, the tube's over there. Okay, whenever you like.\n[0:08] Speaker 2: ${HELLO}\n[0:14] Speaker 1: ${TALK.slice(0, 74)}\n[0:22] Speaker 2: Use it twice a day and wash your hands before and after.\n[0:30] Speaker 1: Thanks, bye.`);
  expect(station.start.time).toBe(8);
});

test("a patient who greets first is inside", () => {
  const station = stationIn(`Patient: Hello, are you the pharmacist?\nCandidate: Yes, hello, my name is Iris.\nPatient: ${TALK.slice(0, 74)}\nCandidate: Use it twice a day and wash your hands after.\nPatient: Thanks, bye.`);
  expect(station.start.word).toBe(0);
});

test("without any introduction the station starts with speech, and that is told as a guess", () => {
  const station = stationIn(TALK.slice(4));
  expect(station.start.word).toBe(0);
  expect(station.start.confidence).toBeLessThan(0.6);
  expect(station.findings.filter((finding) => finding.code === "SW-S09")).toHaveLength(2);
});

test("two minutes left is not the end: it is an announcer's stretch inside the station", () => {
  const middle = TALK.replace("Will it thin", "You have two minutes remaining. Will it thin");
  const station = stationIn(`${HELLO} ${middle} ${BYE}`);
  expect(inside(station)).toBe(`${HELLO} ${middle} ${BYE}`);
  expect(station.excluded.map(({ first, end }) => textOf(station, first, end))).toEqual(["You have two minutes remaining."]);
  expect(roleOf(station, "two minutes remaining.")).toBe("announcer");
  expect(station.sentences.filter((sentence) => sentence.role === "announcer").every((sentence) => !sentence.inStation)).toBe(true);
});

test("the time announcement ends a station that has no leave-taking", () => {
  const station = stationIn(`${HELLO} ${TALK} Time is up, please stop. Okay, sorry, and keep it away from your eyes.`);
  expect(inside(station)).toBe(`${HELLO} ${TALK}`);
  expect(station.end.reason).toContain("'Time is up' (line 1)");
});

test("whoever lets the candidate in by other words opens the station too", () => {
  for (const words of ["Two minutes to read. Begin please.", "Enter the station now.", "This is station two. The recording has started. You may enter the station.", "Your time starts now, please go in."]) {
    expect(inside(stationIn(`${words} ${STATION}`)), words).toBe(STATION);
    expect(inside(stationIn(bare(`${words} ${STATION}`))), words).toBe(bare(STATION));
  }
});

test("feedback on the time left over ends a station that nobody took leave of", () => {
  const station = stationIn(`${HELLO} ${TALK} That's us then. Cheers. You've loads of time left, you could have slowed down. You didn't give a leaflet, did you?`);
  expect(inside(station)).toBe(`${HELLO} ${TALK} That's us then. Cheers.`);
});

test("time that the patient has left is no feedback", () => {
  const talk = TALK.replace("Any other", "There's plenty of time left on your prescription, so you could have it made up in June. Any other");
  expect(inside(stationIn(`${HELLO} ${talk} ${BYE}`))).toBe(`${HELLO} ${talk} ${BYE}`);
});

test("feedback after the leave-taking is outside, and is the examiner's", () => {
  const debrief = "So how do you think that went? I think I forgot to ask about other medicines. Yeah, you missed the other medicines, but the teach-back went very well.";
  const station = stationIn(`${STATION} ${debrief}`);
  expect(inside(station)).toBe(STATION);
  expect(roleOf(station, "how do you think")).toBe("examiner");
});

test("an examiner's questions after the patient has left are outside", () => {
  const station = stationIn(`Candidate: ${HELLO}\nPatient: I've got this cream for my hands and I don't know how much to use.\nCandidate: Use it twice a day. Wash your hands before and after. Any questions?\nPatient: No, thank you.\nCandidate: Goodbye.\nExaminer: What would you record in the notes?\nCandidate: I would record the advice I gave.`);
  expect(textOf(station, station.end.word - 1, station.end.word)).toBe("Goodbye.");
});

test("an examiner who breaks in is excluded", () => {
  const station = stationIn(`Candidate: ${HELLO}\nPatient: I've got this cream and I don't know how much to use.\nExaminer: Please speak up a little.\nCandidate: Sorry. Use it twice a day. Wash your hands before and after.\nPatient: Okay, thanks, bye.`);
  expect(station.excluded.map(({ first, end }) => textOf(station, first, end))).toEqual(["Please speak up a little."]);
  expect(station.end.word).toBe(station.transcript.words.length);
});

test("the candidate's new start is the start", () => {
  const station = stationIn(`Hello, I'm Iris, the pharmacist. So you have a, um. Sorry, can I start again? ${STATION}`);
  expect(inside(station)).toBe(STATION);
  expect(station.restarts).toEqual([station.start.word]);
  expect(station.findings.map((finding) => finding.code)).toContain("SW-S08");
});

test.each(["Sorry, let me say that again.", "Let me start again with the cream.", "If it itches, start using it again."])("a repeat of one step is no new start (%s)", (again) => {
  const talk = TALK.replace("One fingertip", `${again} One fingertip`);
  const station = stationIn(`${HELLO} ${talk} ${BYE}`);
  expect(inside(station)).toBe(`${HELLO} ${talk} ${BYE}`);
  expect(station.restarts).toEqual([]);
});

test("several stations are told apart by their headings, and asked about", () => {
  const two = `# Station 1\n[0:05] ${STATION}\n# Station 2\n[6:00] ${STATION}`;
  expect(() => stationIn(two)).toThrow(ProblemError);
  expect(() => stationIn(two)).toThrow(/2 stations: \(1\) 0:05 to .*'Station 1'.*\(2\) 6:00 to .*'Station 2'.*SW-S01.*--from and --to/s);
});

test("stations over an hour into a recording are told in the hours that --from and --to take", () => {
  expect(() => stationIn(`# Station 1\n[0:05] ${STATION}\n# Station 2\n[1:12:00] ${STATION}`)).toThrow(/\(2\) 1:12:00 to 1:/);
});

test("and by announcements or introductions with a leave-taking between", () => {
  expect(() => stationIn(`[0:01] You may begin. ${STATION} Time is up.\n[6:00] You may begin. ${STATION} Time is up.`)).toThrow(/2 stations/);
  expect(() => stationIn(`[0:01] ${STATION}\n[6:00] ${STATION}`)).toThrow(/2 stations/);
});

test("the times told of each end before the debrief and the next one's set-up, and give it when they are asked for", () => {
  const debrief = "So how do you think that went? You missed the other medicines, but the teach-back went very well. Shall we swap?";
  const two = `[0:01] You may begin. ${STATION} ${debrief}\n[6:00] Is it recording? You're the patient now. Whenever you're ready. ${STATION}`;
  let told = "";
  try {
    stationIn(two);
  } catch (error) {
    told = String(error);
  }
  const clock = (text: string): number => Number(text.split(":")[0]) * 60 + Number(text.split(":")[1]);
  const places = [...told.matchAll(/(\d+:\d\d) to (\d+:\d\d)/g)].map(([, from, to]) => ({ from: clock(from!), to: clock(to!) }));
  expect(places).toHaveLength(2);
  for (const place of places) {
    const said = inside(stationIn(two, place));
    expect(said).toContain(STATION);
    expect(said).not.toMatch(/think that went|the patient now/);
  }
});

test("times decide which of several is meant", () => {
  const station = stationIn(`[0:01] ${STATION}\n[6:00] ${STATION}`, { from: 350, to: 900 });
  expect(inside(station)).toBe(STATION);
  expect(station.start.time).toBe(360);
  expect(station.start.reason).toContain("as told");
});

test("times outside the recording, or of a transcript without times, are refused", () => {
  expect(() => stationIn(`[0:01] ${STATION}`, { from: 5000 })).toThrow(/SW-S02/);
  expect(() => stationIn(STATION, { from: 10 })).toThrow(/SW-S03/);
});

test("saying one's name again without a leave-taking is not another station", () => {
  const station = stationIn(`${HELLO} ${TALK} Again, my name is Iris if you need me. ${BYE}`);
  expect(station.start.word).toBe(0);
});

const TEACH = "I've got this cream for my hands and I don't know how much to use.\nCandidate: Use it twice a day, thinly, and wash your hands before and after. Keep it away from your eyes. Is there anything else?\nPatient: No, that's everything.";
const lastWords = (text: string, count = 1): string => {
  const station = stationIn(text);
  return textOf(station, station.end.word - count, station.end.word);
};

describe("the end does not lie inside the examiner's words", () => {
  const open = `Candidate: ${HELLO}\nPatient: ${TEACH}`;

  test("an examiner who thanks both after the farewell is outside, and the reason quotes one speaker", () => {
    const station = stationIn(`${open}\nCandidate: See you later.\nPatient: Cheers, bye.\nExaminer: Thank you both. Sit down a moment, please.`);
    expect(textOf(station, station.end.word - 2, station.end.word)).toBe("Cheers, bye.");
    expect(station.end.reason).toBe("after the leave-taking 'bye' (line 6)");
  });

  test("so is one who ends a talk without any farewell, and what the candidate says to them after it", () => {
    const station = stationIn(`${open}\nCandidate: Fine, you keep hold of that card.\nExaminer: Lovely, and that went quickly. What did you leave out?\nCandidate: The other medicines.`);
    expect(textOf(station, station.end.word - 1, station.end.word)).toBe("card.");
    expect(station.end.reason).toMatch(/before the examiner's words 'Lovely/);
  });

  test("an examiner who only tells the clock near the end is no end", () => {
    expect(lastWords(`${open}\nExaminer: One minute remaining.\nCandidate: Keep the tube below twenty-five degrees, and throw it away after three months.`, 2)).toBe("three months.");
  });
});

test("a heading of the file parts the debrief from the station, with times or without", () => {
  for (const heading of ["--- debrief ---", "== Feedback ==", "## After the station"]) {
    const station = stationIn(`Candidate: ${HELLO}\nPatient: ${TEACH}\nCandidate: Mind the step.\n\n${heading}\n\nExaminer: What was your plan?\nCandidate: To cover the cream.\nPatient: I liked it.`);
    expect(textOf(station, station.end.word - 1, station.end.word)).toBe("step.");
    expect(station.end.reason).toContain("before the heading");
  }
});

describe("without labels, without punctuation", () => {
  const talk = bare(`${HELLO} ${TALK}`);

  test("the farewell of both is the end, though the words after it tell nothing by themselves", () => {
    expect(lastWords(`${talk} thank you so much cheers bye bye bye right shall we swap places the kettle is on over there`, 3)).toBe("bye bye bye");
  });

  test("who stops the clock ends the station", () => {
    const station = stationIn(`${talk} lovely right that is time well done im stopping there i'll stop the watch god that was fast you flew through it`);
    expect(textOf(station, station.end.word - 1, station.end.word)).toMatch(/lovely|right/);
    expect(station.end.reason).toContain("that is time");
  });

  test("who starts the clock, or says go, starts the station, and the start stands at the greeting", () => {
    for (const go of ["im starting the timer so go ahead when youre ready", "so ready steady and go", "in your own time then off you go"]) {
      const station = stationIn(`put the chair there mind the cable which one is it the cream one ${go} ${talk} thanks bye`);
      expect(textOf(station, station.start.word, station.start.word + 3)).toBe("hello my name");
      expect(station.start.reason).toContain("'hello my name");
    }
  });
});

test("words as of a farewell in the middle are none: care to be taken, a bye that is told of", () => {
  const middle = TALK.replace("Will it thin", "Take care not to rub it in too hard. My sister said bye to hers. Thanks for that. Will it thin");
  expect(inside(stationIn(`${HELLO} ${middle}`))).toBe(`${HELLO} ${middle}`);
});

test("shall we start, deep in the talk, does not start the station again", () => {
  const station = stationIn(`${TALK.slice(4)} ${"You can use it on your arms too, on your neck and on your back. ".repeat(3)} So shall we start with the tube? Open it. That is all.`);
  expect(station.start.word).toBe(0);
});

describe("the reason for a start fits the place where it stands", () => {
  test("talk to a labelled examiner before the patient is there is none of the station", () => {
    const station = stationIn(`Candidate: Hello, I'm Tove, is this the room for the cream?\nExaminer: It is, the patient is coming in now.\nCandidate: Good morning, I'm Tove, one of the pharmacists.\nPatient: ${TEACH}\nCandidate: Goodbye.`);
    expect(textOf(station, station.start.word, station.start.word + 2)).toBe("Good morning,");
    expect(station.start.reason).toMatch(/after the examiner's words '.*' \(line 2\)/);
  });

  test("a patient's hello before the introduction is inside, and is what the reason quotes first", () => {
    const station = stationIn(`Patient: Excuse me, is anyone there?\nCandidate: Yes, hello, my name is Tove, I'm the pharmacist.\nPatient: ${TEACH}\nCandidate: Goodbye.`);
    expect(station.start.word).toBe(0);
    expect(station.start.reason).toMatch(/^at the patient's words 'Excuse me, is anyone there' \(line 1\), before the candidate's introduction 'hello/);
  });
});

test("an announcement that cuts into a sentence takes nothing of the sentence with it", () => {
  const station = stationIn(`1\n00:00:01,000 --> 00:00:20,000\n${HELLO} ${TALK}\n\n2\n00:00:21,000 --> 00:00:24,000\nAnd then the tube, once it's open, it\n\n3\n00:00:24,500 --> 00:00:28,000\nTime is up. Please leave the room.\n`, {}, "a.srt");
  expect(textOf(station, station.end.word - 2, station.end.word)).toBe("open, it");
  expect(station.end.time).toBeCloseTo(24, 5);
});

test("a third name that is heard only around the talk, and calls the time, is the examiner's", () => {
  const station = stationIn(`Odile: Right, off you go when you're ready.\nTove: ${HELLO}\nBram: I've got this cream for my hands and I don't know how much to use. My doctor told me nothing.\nTove: Use it twice a day, thinly, and wash your hands before and after. Keep it away from your eyes. Is there anything else you would like to know about it?\nBram: No, I think that's everything. I'll have a go tonight.\nOdile: Okay, stop there. You left out the allergies, I think.\nTove: I did.`);
  expect(roleOf(station, "You left out")).toBe("examiner");
  expect(textOf(station, station.start.word, station.start.word + 1)).toBe("Hello,");
  expect(textOf(station, station.end.word - 1, station.end.word)).toBe("tonight.");
});

describe("what is said of a device or a medicine is no announcement", () => {
  const after = (sentence: string) => `${HELLO} ${TALK} ${sentence} ${TALK.slice(4)} ${BYE}`;
  test.each([
    "You press it on the skin and leave it there for the count of ten.",
    "Stick it on, and leave it there.",
    "Please stop the old cream, and don't put any of it on while you use this one.",
    "You may start to itch a little on the second day.",
    "You may start feeling it by the weekend.",
  ])("%s", (sentence) => {
    expect(inside(stationIn(after(sentence)))).toBe(after(sentence));
    expect(inside(stationIn(bare(after(sentence))))).toBe(bare(after(sentence)));
  });
  test("but 'we'll leave it there' with little behind it ends the station", () => {
    expect(inside(stationIn(`${HELLO} ${TALK} Okay, let's leave it there. Thank you very much.`))).toBe(`${HELLO} ${TALK}`);
  });
  test("and 'you may begin' before a greeting starts it, without punctuation too", () => {
    expect(inside(stationIn(bare(`okay you may begin ${STATION}`)))).toBe(bare(STATION));
  });
});

test.each(["(door closes)", "*beep*", "Announcer: [bell rings]"])("a noise minutes before the talk does not start the clock (%s)", (noise) => {
  const station = stationIn(`[0:02] ${noise}\n[4:10] Candidate: ${HELLO}\n[4:16] Patient: ${TALK.slice(0, 74)}\n[4:22] Candidate: Use it twice a day.\n[4:26] Patient: Thanks, bye.`);
  expect(station.start.time).toBe(250);
  expect(inside(station)).toContain(HELLO);
});

test("nor does one minutes behind it stop the clock", () => {
  const talk = `[0:00] Candidate: ${HELLO}\n[0:06] Patient: ${TALK.slice(0, 74)}\n[0:12] Candidate: Use it twice a day.\n[0:16] Patient: Thanks, bye.`;
  const station = stationIn(`${talk}\n[6:10] [silence]\n[9:30] [recording ends]`);
  expect(station.end.time).toBe(stationIn(talk).end.time);
  expect(station.end.time).toBeLessThan(18);
});

test("what could not be heard was said all the same: it belongs to the station's time", () => {
  const captions = (last: string) => `WEBVTT\n\n00:01.000 --> 00:04.000\n<v Iris>${HELLO}\n\n00:04.000 --> 00:09.000\n<v Ben>Hi, thank you. Bye.\n\n00:20.000 --> 00:22.000\n<v Iris>${last}\n`;
  expect(stationIn(captions("[inaudible]")).end.time).toBe(22);
  expect(stationIn(captions("[door closes]")).end.time).toBe(9);
});
