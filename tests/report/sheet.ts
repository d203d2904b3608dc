import type { ElementResult, Evidence, ItemResult, MarkSheet } from "../../src/scoring/types.ts";
import type { Role } from "../../src/station/types.ts";

/*
 * An invented mark sheet with one of everything, for tests of layout and wording.
 * The scenario and every word in it are made up.
 */

let nextWord = 0;

export function said(start: number | null, quote: string, role: Role = "candidate", estimated = false): Evidence {
  const count = quote.split(" ").length;
  nextWord += count;
  return {
    first: nextWord - count,
    end: nextWord,
    quote,
    line: start === null ? 3 : 2 + Math.floor(start / 20),
    start,
    endTime: start === null ? null : start + count * 0.4,
    estimated,
    role,
  };
}

export function element(label: string, evidence: Evidence[], rest: Partial<ElementResult> = {}): ElementResult {
  return {
    id: label.toLowerCase().replaceAll(/[^a-z0-9]+/g, "-"),
    label,
    content: evidence.length > 0 ? "complete" : "absent",
    elicitation: evidence.length > 0 ? "offered" : null,
    evidence,
    confidence: 0.94,
    ...rest,
  };
}

export function item(section: string, id: string, label: string, elements: ElementResult[], rest: Partial<ItemResult> = {}): ItemResult {
  const complete = elements.every(({ content }) => content === "complete");
  return {
    id,
    section,
    label,
    critical: false,
    weight: 2,
    content: complete ? "complete" : "absent",
    elicitation: complete ? "offered" : null,
    earned: complete ? 2 : 0,
    met: complete,
    elements,
    confidence: 0.93,
    listen: false,
    remarks: [],
    firstSaid: elements.flatMap(({ evidence }) => evidence)[0] ?? null,
    ...rest,
  };
}

const shake = said(96, "and what you want to do is give it a good shake before each puff every single time");
const prime = said(150, "the first time you use it spray it twice into the air away from your face");
const puff = said(120, "press it down once and breathe in slowly until your lungs are full");
const shakeAgain = said(300, "so remember to give it a good shake before each puff");

export function completeSheet(): MarkSheet {
  const items: ItemResult[] = [
    item("opening", "introduction", "Greets and gives own name and role", [
      element("Gives own name", [said(12, "hello my name is Ana")]),
      element("Says that they are the pharmacist", []),
    ], { content: "partial", earned: 1, met: false, confidence: 0.88 }),
    item("opening", "allergies", "Asks about allergies", [
      element("Asks about allergies", [said(31, "any allergies to medicines at all")], { elicitation: "confirmed" }),
    ], { elicitation: "confirmed", earned: 1, remarks: ["the patient said it, the candidate confirmed it: half the marks"] }),
    item("technique", "shake", "Shakes the inhaler before each puff", [element("Shakes the inhaler before each puff", [shake, shakeAgain])], {
      critical: true,
      confidence: 0.97,
    }),
    item("technique", "breath-hold", "Holds the breath after breathing in", [
      element("Holds the breath for 10 seconds", [said(140, "then hold your breath for about thirty seconds")], {
        content: "incorrect",
        reason: "said 30 seconds, the rubric has 10 seconds",
      }),
    ], { critical: true, content: "incorrect", earned: 0, met: false }),
    item("technique", "prime", "Primes a new inhaler", [element("Primes a new inhaler", [prime])], { remarks: ["first said as one spray, put right at 2:35"] }),
    item("technique", "one-puff", "Presses once while breathing in slowly", [
      element("Presses once", [puff]),
      element("Breathes in slowly", [], { content: "cannot-tell", confidence: 0.5, reason: "shown and not said" }),
    ], { content: "cannot-tell", earned: 0, met: false, listen: true, confidence: 0.52, critical: true }),
    item("aftercare", "spacer", "Offers a spacer", [element("Offers a spacer", [])], { content: "not-applicable" }),
    item("aftercare", "oral-thrush", "Answers what to do about a sore mouth", [element("Rinses the mouth", [])], { content: "not-offered" }),
    item("aftercare", "storage", "Says where to keep it", [element("Away from heat", [])], { weight: 1 }),
  ];
  return {
    form: "saidwell/mark-sheet@1",
    version: "0.1.0",
    candidate: "Candidate 7",
    transcript: { file: "rehearsals/seven.vtt", format: "webvtt", words: 812, timing: "segment", duration: 512.4 },
    rubric: { id: "pressurised-inhaler", title: "Pressurised metered-dose inhaler", version: 3, hash: "c".repeat(64), file: "pressurised-inhaler" },
    scenario: { task: "Explain the new reliever inhaler to an adult who has never used one.", counselled: "patient" },
    station: {
      start: { time: 10, line: 4, reason: "after the announcement 'you may begin' (line 4)", confidence: 0.95 },
      end: { time: 442.5, line: 61, reason: "at the announcement 'time is up' (line 61)", confidence: 0.9 },
      restarts: 1,
      roles: [
        { role: "candidate", words: 640, confidence: 0.93 },
        { role: "patient", words: 130, confidence: 0.9 },
        { role: "announcer", words: 42, confidence: 0.99 },
      ],
      roleSource: "mixed",
      labelRoles: [
        { label: "Speaker 1", role: "candidate", confidence: 0.98 },
        { label: "Speaker 2", role: "patient", confidence: 0.97 },
      ],
    },
    items,
    corrections: null,
    sections: [
      { id: "opening", title: "Opening", earned: 2, available: 4, coverage: 50, seconds: 34.2 },
      { id: "technique", title: "Using the inhaler", earned: 4, available: 6, coverage: 66.67, seconds: 131 },
      { id: "aftercare", title: "Looking after it", earned: 0, available: 1, coverage: 0, seconds: 0 },
    ],
    total: { earned: 6, available: 11, percent: 54.5454, provisional: true },
    critical: { total: 3, met: 1, missed: ["breath-hold"], doubted: [], unsure: ["one-puff"] },
    unsafe: {
      listed: 6,
      found: [
        {
          id: "double-dose",
          label: "Take extra puffs without limit",
          severity: "major",
          evidence: said(270, "just take as many puffs as you like until it settles"),
          confidence: 0.91,
          corrected: false,
          listen: false,
        },
        {
          id: "share",
          label: "Share the inhaler",
          severity: "moderate",
          evidence: said(280, "you could let your sister use it"),
          confidence: 0.8,
          corrected: true,
          listen: false,
        },
        {
          id: "stop-preventer",
          label: "Stop the preventer",
          severity: "major",
          evidence: said(290, "you can now stop it"),
          confidence: 0.4,
          corrected: false,
          listen: true,
        },
      ],
    },
    incorrect: [
      {
        item: "breath-hold",
        element: "holds-the-breath-for-10-seconds",
        label: "Holds the breath for 10 seconds",
        evidence: said(140, "then hold your breath for about thirty seconds"),
        reason: "said 30 seconds, the rubric has 10 seconds",
        corrected: false,
        confidence: 0.9,
      },
      {
        item: "prime",
        element: "prime",
        label: "Primes a new inhaler",
        evidence: said(145, "spray it once into the air"),
        reason: "said 1 spray, the rubric has 2 sprays",
        corrected: true,
        confidence: 0.9,
      },
    ],
    differs: [
      {
        item: "storage",
        element: "discard",
        label: "Discard date",
        evidence: said(400, "throw it away after a year"),
        reason: "right by US guidance, this station follows GB",
        corrected: false,
        confidence: 0.7,
      },
    ],
    claims: [{ evidence: said(330, "it has about two hundred doses in it") }],
    questions: [
      { id: "how-often", label: "how often can I use it", asked: said(180, "how often can I use it", "patient"), answer: "answered", evidence: said(183, "up to four times a day"), scripted: true },
      { id: "sport", label: "can I use it before sport", asked: said(200, "can I use it before football", "patient"), answer: "deferred", evidence: said(203, "I will check that and tell you"), scripted: true },
      { id: "bus", label: "can I take it on the bus", asked: said(220, "is it all right on the bus", "patient"), answer: "ignored", evidence: null, scripted: false },
      { id: "alcohol", label: "can I drink with it", asked: null, answer: "not-asked", evidence: null, scripted: true },
    ],
    teachBack: {
      asked: said(350, "just so I know I explained it well can you tell me how you will use it"),
      answered: said(356, "I shake it and press it twice", "patient"),
      errors: [
        {
          evidence: said(357, "press it twice", "patient"),
          label: "Presses once while breathing in slowly",
          noticed: said(362, "nearly"),
          corrected: said(363, "just one press each time"),
        },
        { evidence: said(370, "hold it for a bit", "patient"), label: "Holds the breath after breathing in", noticed: null, corrected: null },
      ],
    },
    order: {
      broken: [
        {
          first: "prime",
          then: "one-puff",
          severity: "moderate",
          reason: "an unprimed inhaler may give an empty first puff",
          firstSaid: prime,
          thenSaid: puff,
        },
      ],
      inOrder: { longest: 5, said: 6 },
    },
    repeats: [{ label: "Shakes the inhaler before each puff", firstSaid: shake, again: shakeAgain, seconds: 4.4, words: 11 }],
    asides: [],
    time: {
      limit: 420,
      target: 390,
      used: { value: 432.5, estimated: false },
      overTarget: { value: 42.5, estimated: false },
      overLimit: { value: 12.5, estimated: false },
      wordsPerMinute: { value: 88.78, estimated: false },
      articulation: { value: 142.2, estimated: true },
      curve: [88, 120, 141, 150, 160, 132, 90, 0, 110, 145, 170, 151, 120, 99].map((wordsPerMinute, index) => ({
        from: 10 + index * 30,
        to: 40 + index * 30,
        wordsPerMinute,
      })),
      candidateWords: 640,
      patientWords: 130,
      patientShare: 0.1688,
      pauses: { value: { count: 4, seconds: 19.5, longest: [{ at: 233, seconds: 9 }, { at: 100, seconds: 4.2 }] }, estimated: false },
      fillers: { count: 31, perHundredWords: 4.84, commonest: [{ word: "um", count: 19 }, { word: "you know", count: 12 }] },
      technicalWords: [{ word: "bronchodilator", evidence: said(60, "it is a bronchodilator"), plain: "opens the airways" }],
      readingGrade: { value: null, why: "the transcript has no full stops" },
      afterLimit: { evidence: [said(433, "and keep it somewhere cool")], words: 24, items: ["storage"] },
    },
    plan: {
      costs: [
        { what: "repeats", words: 11, seconds: 4.4 },
        { what: "fillers", words: 31, seconds: 12.1 },
        { what: "asides", words: 0, seconds: 0 },
        { what: "pauses", words: 0, seconds: 19.5 },
      ],
      projected: { value: 396.5, estimated: true },
      wordsToCut: { value: 63, estimated: true },
      paceNeeded: { value: 158, estimated: true },
      caution: "faster than 150 words a minute is hard to follow for many people (invented source, 2020)",
    },
    changes: [
      { advice: "Say to hold the breath for 10 seconds, not 30.", worth: "a critical item, 2 marks", item: "breath-hold" },
      { advice: "Never tell a patient to take puffs without limit.", worth: "an unsafe statement" },
      { advice: "Say the priming once, before the first puff.", worth: "an order pair, 4 seconds", item: "prime" },
    ],
    result: {
      outcome: "fail",
      reasons: ["1 critical item is not met: Holds the breath after breathing in", "1 major unsafe statement stands uncorrected"],
      rule: "at least 70% of the marks, all critical items, no major or moderate unsafe statement",
    },
    findings: [
      { code: "SW-T12", severity: "warning", file: "rehearsals/seven.vtt", line: 33, message: "the end stands before the start; the start of the next stretch was taken", mend: "Give the cue an end later than 3:10." },
    ],
    caution: "A practice aid. It reads a transcript and can be wrong; a trained person decides.",
  };
}

/** The same sheet from a transcript without times: every time is null, every figure of time says why. */
export function untimedSheet(): MarkSheet {
  const strip = (data: unknown): unknown => {
    if (Array.isArray(data)) return data.map(strip);
    if (data === null || typeof data !== "object") return data;
    const copy = Object.fromEntries(Object.entries(data).map(([key, value]) => [key, strip(value)]));
    if ("quote" in copy) Object.assign(copy, { start: null, endTime: null });
    if ("reason" in copy && "time" in copy) copy.time = null;
    if ("seconds" in copy) copy.seconds = null;
    return copy;
  };
  const sheet = strip(completeSheet()) as MarkSheet;
  const none = { value: null, why: "the transcript has no times" } as const;
  sheet.transcript = { ...sheet.transcript, format: "text", timing: "none", duration: null };
  Object.assign(sheet.time, { used: none, overTarget: none, overLimit: none, wordsPerMinute: none, articulation: none, pauses: none, curve: [], afterLimit: null });
  Object.assign(sheet.plan, { projected: none, wordsToCut: none, paceNeeded: none, caution: null });
  return sheet;
}
