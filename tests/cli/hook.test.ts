import { readFileSync } from "node:fs";
import { beforeAll, describe, expect, test } from "vitest";
import { BLOCK, SOUND } from "../review/card.ts";
import { built } from "./built.ts";

/* The hook of the README, word for word, in a repository of its own, with real commits. */

const saidwell = built();
const hook = /\n```sh\n(#!\/bin\/sh\n[^`]*)```\n/.exec(readFileSync("README.md", "utf8"))![1]!;
const CARD = SOUND.replace("sections:\n", "sections:\n  - include: blocks/opening.yaml\n");
const BROKEN = CARD.replace("then: hold,", "then: holld,");

/** Nothing of this machine's git settings. */
const git = (line: string) => saidwell.bash(`cd repo && ${line}`, { GIT_CONFIG_GLOBAL: "/dev/null", GIT_CONFIG_SYSTEM: "/dev/null" });
const commit = (line: string) => git(`git reset -q --hard start && git clean -qfd rubrics && { ${line}; } && git -c user.name=a -c user.email=a@example.org commit -qm change`);

beforeAll(() => {
  saidwell.bash("mkdir -p repo/rubrics/blocks repo/node_modules/.bin; cd repo; git init -q; echo node_modules > .gitignore");
  saidwell.bash(`cd repo && ln -s "$(command -v saidwell)" node_modules/.bin/saidwell`);
  saidwell.write("repo/rubrics/card.yaml", CARD);
  saidwell.write("repo/rubrics/blocks/opening.yaml", BLOCK);
  saidwell.write("repo/notes.txt", "notes\n");
  expect(git("git add . && git -c user.name=a -c user.email=a@example.org commit -qm start && git tag start").code).toBe(0);
  saidwell.write("repo/.git/hooks/pre-commit", hook);
  saidwell.bash("chmod +x repo/.git/hooks/pre-commit");
  saidwell.write("broken.yaml", BROKEN);
});

describe("the README's pre-commit hook", () => {
  test.each([
    ["a sound edit", "sed -i s/hard/firmly/ rubrics/card.yaml && git add ."],
    ["an edit of something else", "echo more >> notes.txt && git add ."],
    ["a broken rubric that is not staged", "cp ../broken.yaml rubrics/card.yaml && echo more >> notes.txt && git add notes.txt && sed -i s/Greets/Welcomes/ rubrics/blocks/opening.yaml && git add rubrics/blocks"],
    ["all rubrics taken away", "git rm -rq rubrics"],
  ])("lets through: %s", (_what, line) => {
    expect(commit(line)).toMatchObject({ code: 0 });
  });

  test.each([
    ["a broken rubric", "cp ../broken.yaml rubrics/card.yaml && git add .", "SW-R05"],
    ["a broken rubric that was mended only in the folder", "cp rubrics/card.yaml ../whole.yaml && cp ../broken.yaml rubrics/card.yaml && git add . && cp ../whole.yaml rubrics/card.yaml", "SW-R05"],
    ["a block taken away", "git rm -q rubrics/blocks/opening.yaml", "SW-R04"],
    ["a block moved out of the folder", "git mv rubrics/blocks/opening.yaml opening.yaml", "SW-R04"],
    ["a broken file that ends in .yml", "printf 'saidwell: rubric@1\\nx: [' > rubrics/new.yml && git add .", "SW-R02"],
  ])("stops: %s", (_what, line, code) => {
    const { code: exit, out, err } = commit(line);
    expect({ exit, told: (out + err).includes(code), path: / rubrics\/|^rubrics\//m.test(out + err) }).toEqual({ exit: 1, told: true, path: true });
  });
});
