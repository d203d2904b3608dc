// Invented stations; behaviour only. Figures on real consultations: npm run bench:roles.
import { expect, test } from "vitest";
import { bare, merged, roleOf, shareRight, stationIn } from "./reading.ts";

const PATCH = `
C: Good morning, my name is Iris and I'm the pharmacist. What can I do for you today?
P: Hi, I've been given these patches for my back and I'm not sure where they go.
C: Okay. Before we start, are you taking any other medicines for pain?
P: Just paracetamol, a couple of times a day.
C: Right. You put one patch on clean, dry skin that has no hair on it, on your upper arm or your chest. Press it down with the palm of your hand for thirty seconds and leave it on for three days.
P: Can I have a shower with it on?
C: Yes, you can shower, but keep it away from heat, so no hot water bottle and no sauna. When you change it, choose a different place and fold the old one in half before you throw it away.
P: Okay, and what if it falls off?
C: If it falls off, put a new one on somewhere else and tell us. It can make you sleepy, so please don't drive until you know how you feel. Can you tell me what you're going to do when you get home?
P: So I stick it on my arm, press it for half a minute, and I change it every three days.
C: That's it. Do you have any other questions?
P: No, that was really helpful. Thank you.
C: You're welcome. Take care.
`;

const LOZENGE = `
C: Hello there, I'm Paul, I'm one of the pharmacists here. How can I help?
P: My little girl's got a sore throat and I wondered if she could have these lozenges.
C: How old is she?
P: She's four.
C: Okay, I wouldn't give lozenges to a child of four because she could choke on them. Has she had a fever at all?
P: A bit, thirty eight last night.
C: And is she drinking alright?
P: Yeah she's drinking but she doesn't want to eat.
C: You can give her paracetamol liquid. Shake the bottle, measure the dose with the syringe, and wait at least four hours before you give another dose. Don't give more than four doses in a day.
P: Right, and should I keep her off nursery?
C: If she has a temperature I would keep her at home. If she gets a rash, or she can't swallow, or it isn't better in a week, I want you to see a doctor.
P: Okay, I'll do that. Thanks very much, bye.
C: Bye bye.
`;

// Far above what the majority class reaches on these (0.6 to 0.7), below what is reached today, so that small changes of the weights pass.
// With whole stations in the fit, which bring some 2 words of a hundred more to the right voice in stations by other hands, a
// "yeah, she's drinking" behind a question is taken for the candidate's: 14 words of 166, hence 0.9.
const PUNCTUATED_LEAST = 0.9;
const BARE_LEAST = 0.85;

test.each([["adult", PATCH], ["carer instead of patient", LOZENGE]])("without labels and turn marks the words are told apart (%s)", (_, truth) => {
  expect(shareRight(stationIn(merged(truth)), truth)).toBeGreaterThan(PUNCTUATED_LEAST);
});

test("without punctuation and case too", () => {
  expect(shareRight(stationIn(bare(merged(PATCH))), PATCH)).toBeGreaterThan(BARE_LEAST);
});

// Known gap: a carer who speaks of a child in the third person, without any punctuation, is told apart for three words in
// four only. This test says so until the model does better; then it fails, and moves up.
test.fails("without punctuation and case, a carer's talk is told apart as well as a patient's", () => {
  expect(shareRight(stationIn(bare(merged(LOZENGE))), LOZENGE)).toBeGreaterThan(BARE_LEAST);
});

test("two voices in one unpunctuated run are cut inside it", () => {
  const station = stationIn(bare(merged(PATCH)));
  expect(station.transcript.segments).toHaveLength(1);
  expect(station.turns.length).toBeGreaterThan(8);
  expect(station.roleSource).toBe("model");
});

test("lone punctuation, as some transcripts space it, changes nothing", () => {
  const spaced = PATCH.replace(/([.,?])/g, " $1");
  const station = stationIn(merged(spaced));
  expect(shareRight(station, spaced)).toBeGreaterThan(PUNCTUATED_LEAST);
});

const turns = (candidate: string, patient: string, truth = PATCH): string => truth.replaceAll("C:", `${candidate}:`).replaceAll("P:", `${patient}:`);

test.each([["Speaker 1", "Speaker 2"], ["Speaker 2", "Speaker 1"], ["Iris", "Tom"]])("labels that tell nothing get roles by what they say (%s, %s)", (candidate, patient) => {
  const station = stationIn(turns(candidate, patient));
  expect(Object.fromEntries(station.labelRoles.map(({ label, role }) => [label, role]))).toEqual({ [candidate]: "candidate", [patient]: "patient" });
  expect(station.roleSource).toBe("labels");
  expect(station.labelRoles.every(({ confidence }) => confidence > 0.9)).toBe(true);
});

test.each([["Candidate", "Patient"], ["Student", "Carer"], ["Pharmacist", "Mother"], ["Pharmacy student 2", "Simulated patient"]])("telling names are believed (%s, %s)", (candidate, patient) => {
  const station = stationIn(turns(candidate, patient));
  expect(Object.fromEntries(station.labelRoles.map(({ label, role }) => [label, role]))).toEqual({ [candidate]: "candidate", [patient]: "patient" });
});

test("names the wrong way round are believed, and told", () => {
  const station = stationIn(turns("Patient", "Pharmacist"));
  expect(roleOf(station, "Press it down")).toBe("patient");
  expect(station.findings.map((finding) => finding.code)).toContain("SW-S06");
});

test("what the person says of the labels goes before everything", () => {
  const station = stationIn(turns("Patient", "Pharmacist"), { candidate: "patient" });
  expect(roleOf(station, "Press it down")).toBe("candidate");
  expect(roleOf(station, "Can I have a shower")).toBe("patient");
  expect(station.roleSource).toBe("told");
});

test("a label that is not there is refused, with those that are", () => {
  expect(() => stationIn(turns("Speaker 1", "Speaker 2"), { candidate: "Ana" })).toThrow(/no speech is labelled "Ana".*"Speaker 1", "Speaker 2".*SW-S04/s);
});

test("several labels may be the candidate's or the patient's", () => {
  let line = 0;
  const station = stationIn(PATCH.replace(/^([CP]):/gm, (_, side: string) => `${side === "C" ? "Speaker 1" : ++line % 2 === 0 ? "Speaker 2" : "Speaker 3"}:`));
  expect(Object.fromEntries(station.labelRoles.map(({ label, role }) => [label, role]))).toEqual({ "Speaker 1": "candidate", "Speaker 2": "patient", "Speaker 3": "patient" });
});

test("all speech under one label counts as unlabelled, and is told", () => {
  const station = stationIn(turns("Speaker 1", "Speaker 1"));
  expect(shareRight(station, PATCH)).toBeGreaterThan(PUNCTUATED_LEAST);
  expect(station.findings.map((finding) => finding.code)).toContain("SW-S05");
  expect(station.roleSource).toBe("model");
});

test("a label that mixes two voices is found out, and its sentences get roles one by one", () => {
  const lines = PATCH.trim().split("\n");
  const mixed = lines.map((line, at) => (at < 3 || at % 4 === 0 ? line.replace(/^[CP]/, (side) => (side === "C" ? "Speaker 1" : "Speaker 2")) : line.replace(/^[CP]/, "Speaker 2"))).join("\n");
  const station = stationIn(mixed);
  expect(station.findings.map((finding) => finding.code)).toContain("SW-S05");
  expect(station.roleSource).toBe("mixed");
  expect(roleOf(station, "Before we start,")).toBe("candidate");
  expect(roleOf(station, "Can I have a shower")).toBe("patient");
});

test("speech without a label among labelled speech gets its role from the model", () => {
  const station = stationIn(`WEBVTT

00:01.000 --> 00:04.000
<v Candidate>Hello, I'm Iris, the pharmacist. How can I help you?

00:04.000 --> 00:08.000
<v Patient>I've been given these patches and I don't know where they go.

00:08.000 --> 00:14.000
Okay. Have you used patches before?

00:14.000 --> 00:16.000
<v Patient>No, never.
`);
  expect(roleOf(station, "Have you used")).toBe("candidate");
  expect(station.roleSource).toBe("mixed");
});

// The teaching and the answer say the same words; only the request between them tells whose they are.
const TEACH_BACK = `
C: Hello, my name is Iris and I'm the pharmacist. Who have I got here?
P: Tom Alder.
C: So this patch goes on your upper arm. You peel the back off, press it down with your palm, count to thirty and leave it on for three days. Okay, so just so I know I was clear, could you talk me through it as if it was Monday?
P: Right, so wash and dry the arm, peel the back off, put it on flat, palm over it, press and count to thirty, then change it Thursday, new place, fold the old one up and into the bin.
C: Perfect. Have you got any questions for me?
P: No, I don't think so.
`;

test.each([["as written", (text: string) => text], ["bare", bare]])("who is asked to say it back is the one who then says it, though it sounds like teaching (%s)", (_, form) => {
  const station = stationIn(form(merged(TEACH_BACK)));
  expect(roleOf(station, form("press it down with your palm,").trim())).toBe("candidate");
  expect(roleOf(station, form("palm over it, press and count to").trim())).toBe("patient");
  expect(roleOf(station, form("new place, fold the old").trim())).toBe("patient");
  expect(roleOf(station, form("any questions for me?").trim())).toBe("candidate");
});

test("who gives a name after the word to begin is the candidate, in rough speech-to-text too", () => {
  const station = stationIn(bare("is the phone on yes okay so im timing you and go hiya take a seat um so my names iris im from the farm a sea who have i got here tom alder tom alder great and what can i do for you i got these patches for my back and i dont know where they go").replaceAll("'", ""));
  expect(roleOf(station, "my names iris")).toBe("candidate");
  expect(roleOf(station, "who have i got")).toBe("candidate");
  expect(roleOf(station, "i dont know where")).toBe("patient");
});
