import { spawnSync } from "node:child_process";
import { beforeAll, expect, test } from "vitest";
import { completionModel } from "../../src/cli/completion/model.ts";
import { buildProgram } from "../../src/cli/program.ts";
import { built } from "./built.ts";

const saidwell = built();
beforeAll(() => {
  saidwell.write("a rehearsal.txt", "x");
  saidwell.write("second.vtt", "x");
});

/** What a real bash offers after these words. */
function offered(...words: string[]): string[] {
  const line = `source <(saidwell completion bash)
COMP_WORDS=(${words.map((word) => `'${word}'`).join(" ")}); COMP_CWORD=${words.length - 1}
_saidwell; printf '%s\\n' "\${COMPREPLY[@]}"`;
  const { out, err } = saidwell.bash(line);
  // Outside a completion bash has no compopt; everything else it says is a fault of the script.
  expect(err.split("\n").filter((text) => text !== "" && !text.includes("compopt"))).toEqual([]);
  return out.trimEnd().split("\n").filter((word) => word !== "").sort();
}

const has = (shell: string) => spawnSync(shell, ["-c", "true"]).status === 0;

test("bash accepts the script", () => {
  const { code, err } = saidwell.bash("saidwell completion bash > completion.bash && bash -n completion.bash");
  expect([code, err]).toEqual([0, ""]);
});

test("bash registers it for the command", () => {
  expect(saidwell.bash("source <(saidwell completion bash); complete -p saidwell").out).toContain("-F _saidwell saidwell");
});

test.each([
  [["saidwell", ""], ["agree", "codes", "cohort", "completion", "cutscore", "explain", "help", "items", "label", "mark", "merge", "progress", "rubric", "rubrics"].concat(["-V", "--version", "-h", "--help"]).sort()],
  [["saidwell", "m"], ["mark", "merge"]],
  [["saidwell", "mark", "--r"], ["--require", "--rubric"]],
  [["saidwell", "mark", "second.vtt", "--format", ""], ["json", "text"]],
  [["saidwell", "mark", "second.vtt", "--format", "=", "j"], ["json"]],
  [["saidwell", "mark", "second.vtt", "--format", "="], ["json", "text"]],
  [["saidwell", "mark", "--rubric", "eye"], ["eye-drops"]],
  [["saidwell", "mark", "-r", "eye"], ["eye-drops"]],
  [["saidwell", "mark", "--require", "with"], ["within-limit", "within-target"]],
  [["saidwell", "mark", "--colour", "a"], ["always", "auto"]],
  [["saidwell", "mark", "--color", "n"], ["never"]],
  [["saidwell", "mark", "sec"], ["second.vtt"]],
  [["saidwell", "mark", "a r"], ["a rehearsal.txt"]],
  [["saidwell", "mark", "--rubric", "sec"], ["second.vtt"]],
  [["saidwell", "label", "--out", "sec"], ["second.vtt"]],
  [["saidwell", "mark", "--limit", ""], []],
  [["saidwell", "completion", ""], ["bash", "fish", "zsh"]],
  [["saidwell", "codes", "SW-T0"], ["SW-T01", "SW-T02", "SW-T03", "SW-T04", "SW-T05", "SW-T06", "SW-T07", "SW-T08"]],
  [["saidwell", "help", "la"], ["label"]],
  [["saidwell", "rubric", "che"], ["check"]],
  [["saidwell", "rubric", "check", "sec"], ["second.vtt"]],
  [["saidwell", "rubric", "check", "second.vtt", "--format", "s"], ["sarif"]],
  [["saidwell", "mark", "rubric", "check", "--r"], ["--require", "--rubric"]],
])("after %o bash offers %o", (words, expected) => {
  expect(offered(...words)).toEqual(expected);
});

test("every command and every option of the program is in every script", () => {
  const model = completionModel(buildProgram(), {});
  for (const shell of ["bash", "zsh", "fish"]) {
    const { out } = saidwell.run(["completion", shell]);
    for (const { name, options } of model.commands) {
      for (const word of name.split(" ")) expect(out).toContain(word);
      for (const { flags } of options) for (const flag of flags) expect(out, `${shell} ${name} ${flag}`).toContain(shell === "fish" ? flag.replace(/^--/, "-l ").replace(/^-(\w)$/, "-s $1") : flag);
    }
  }
});

test("the words of a script need no quoting", () => {
  const model = completionModel(buildProgram(), {});
  const words = model.commands.flatMap(({ options, argument }) => [...(argument?.words ?? []), ...options.flatMap(({ flags, value }) => [...flags, ...(value?.words ?? [])])]);
  for (const word of words) expect(word).toMatch(/^[\w=.-]+$/);
});

test.skipIf(!has("zsh"))("zsh accepts the script", () => {
  const { code, err } = saidwell.bash("saidwell completion zsh > completion.zsh && zsh -n completion.zsh && zsh -fc 'autoload -U compinit; compinit -u -d ./dump; source ./completion.zsh; whence -w _saidwell'");
  expect([code, err]).toEqual([0, ""]);
});

test.skipIf(!has("fish"))("fish accepts the script and completes with it", () => {
  const { code, out, err } = saidwell.bash("saidwell completion fish > completion.fish && fish -c 'source completion.fish; complete -C \"saidwell mark --rubric eye\"'");
  expect([code, err]).toEqual([0, ""]);
  expect(out).toContain("eye-drops");
});

test.skipIf(!has("fish"))("fish completes a command inside a group, and what that command takes", () => {
  const { out, err } = saidwell.bash("saidwell completion fish > completion.fish && fish -c 'source completion.fish; complete -C \"saidwell rubric c\"; complete -C \"saidwell rubric check --format s\"'");
  expect(err).toBe("");
  expect(out.split("\n").map((line) => line.split("\t")[0])).toEqual(expect.arrayContaining(["check", "sarif"]));
});
