import { CATALOGUE } from "../../src/problem/catalogue.ts";
import type { Finding } from "../../src/problem/problem.ts";
import type { CheckReport } from "../../src/review/types.ts";

/** Invented: a report with a finding of every code that a check can tell, in files with awkward names. */
export function everyFinding(): CheckReport {
  const codes = Object.keys(CATALOGUE).filter((code) => /^SW-[RC]/.test(code));
  const files = ["rubrics/eye drops.yaml", "./rubrics/blocks/öffnen#1.yaml", "/elsewhere/a.yaml", "/work/inside.yaml", "shipped:opening", "../above.yaml"];
  const severities = ["error", "warning", "info"] as const;
  const findings = codes.map((code, index): Finding => ({
    code,
    severity: severities[index % 3]!,
    file: files[index % files.length]!,
    ...(index % 7 !== 6 && { line: index + 1, column: 3 }),
    message: `'a <b> & "c" | d' \u001b[31mearns\u0007 ${index} others ]]> \`x\``,
    ...(index % 5 !== 4 && { mend: "say it *another* way" }),
  }));
  return {
    form: "saidwell/rubric-check@1",
    version: "0.1.0",
    today: "2026-11-25",
    files: [
      {
        file: "rubrics/eye drops.yaml",
        kind: "rubric",
        id: "eye-drops",
        figures: {
          items: 2, critical: 1, elements: 3, responses: 50, utterances: 80, unearned: 1, confused: 1, share: 0.02,
          speaking: { words: 30, seconds: 9.5, middleWords: 60, middleSeconds: 18.9, limit: 420, target: 360 },
        },
        confusion: [{ item: "shake", element: "shake", response: "shake|rattle it", said: "shake it", other: "agreement", otherElement: "agreement", effect: "earns", place: { file: "rubrics/eye drops.yaml", line: 9, column: 5 } }],
      },
      { file: "rubrics/quiet.yaml", kind: "rubric", id: "quiet", figures: null, confusion: [] },
      { file: "rubrics/blocks/quiet.yaml", kind: "block", id: "quiet-block", figures: null, confusion: [] },
    ],
    findings,
    counts: { errors: findings.filter(({ severity }) => severity === "error").length, warnings: findings.filter(({ severity }) => severity === "warning").length, notes: findings.filter(({ severity }) => severity === "info").length },
  };
}
