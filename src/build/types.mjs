// Writes the types of the library's door. Types that zod works out are written out in full, so that a program which
// uses them need not have zod.
import { execFileSync } from "node:child_process";
import { readFileSync, writeFileSync } from "node:fs";
import { createRequire } from "node:module";
import { dirname, join } from "node:path";
import ts from "typescript";

const SCHEMA = "src/rubric/schema.ts";

/** Emits dist/types by tsc, then replaces the declarations of the schema module. */
export function writeTypes(outdir = "dist/types") {
  const tsc = createRequire(import.meta.url).resolve("typescript/bin/tsc");
  execFileSync(process.execPath, [tsc, "-p", "tsconfig.build.json", "--outDir", outdir], { stdio: "inherit" });
  writeFileSync(`${outdir}/rubric/schema.d.ts`, spelledOut(SCHEMA));
  const packages = packagesBehind(`${outdir}/index.d.ts`);
  if (packages.length > 0) throw new Error(`types that hold only where a package is installed:\n${packages.join("\n")}`);
}

/** What the types behind a file, through the files it names, take from packages. */
function packagesBehind(file, seen = new Set()) {
  if (seen.has(file)) return [];
  seen.add(file);
  const sources = [...readFileSync(file, "utf8").matchAll(/\b(?:from|import)\s*\(?\s*"([^"]+)"/g)].map(([, source]) => source).filter((source) => !source.startsWith("node:"));
  return sources.flatMap((source) => (source.startsWith(".") ? packagesBehind(join(dirname(file), source.replace(/\.[jt]s$/, ".d.ts")), seen) : [`${file}: ${source}`]));
}

function spelledOut(file) {
  const { options } = ts.parseJsonConfigFileContent(ts.readConfigFile("tsconfig.json", ts.sys.readFile).config, ts.sys, ".");
  const program = ts.createProgram([file, "src/build/yaml.d.ts"], options);
  const checker = program.getTypeChecker();
  const source = program.getSourceFile(file);
  const flags = ts.TypeFormatFlags.NoTruncation | ts.TypeFormatFlags.InTypeAlias | ts.TypeFormatFlags.UseAliasDefinedOutsideCurrentScope;
  const show = (node) => checker.typeToString(checker.getTypeAtLocation(node), undefined, flags);
  const lines = [];
  source.forEachChild((node) => {
    if (ts.isTypeAliasDeclaration(node)) lines.push(`export type ${node.name.text} = ${show(node)};`);
    // An interface is written as it stands: it only names the types above.
    if (ts.isInterfaceDeclaration(node)) lines.push(node.getText(source));
  });
  const text = `${lines.join("\n")}\n`;
  if (/\bz\.|zod|\bany\b/.test(text)) throw new Error(`the types of ${file} cannot be written without zod:\n${text}`);
  return text;
}
