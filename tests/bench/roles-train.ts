// `npm run train:roles [-- --data DIR]`: fits the role model on the three corpora and writes src/station/role-weights.json.
// The same data give the same bytes.
import { writeFileSync } from "node:fs";
import { packWeights } from "../../src/station/weights-format.ts";
import { correct, readCorpora, readCorrections } from "./roles/corpora.ts";
import { CORRECTIONS, SETTINGS, WEIGHTS } from "./roles/settings.ts";
import { strip } from "./roles/strip.ts";
import { example, train } from "./roles/train.ts";

const at = process.argv.indexOf("--data");
const data = at < 0 ? "../shared/data" : process.argv[at + 1]!;
const consultations = correct(readCorpora(data), readCorrections(CORRECTIONS));
const examples = consultations.flatMap((each) => [example(strip(each, "written")), example(strip(each, "bare", "anywhere"))]);
const weights = train(examples, SETTINGS, console.log);
const packed = packWeights(weights);
writeFileSync(
  WEIGHTS,
  `${JSON.stringify(
    {
      credit: [
        "Fitted on PriMock57 (Papadopoulos Korfiatis et al., ACL 2022), CC BY 4.0",
        "Fitted on ACI-Bench, train split (Yim et al., Scientific Data 2023), CC BY 4.0",
        "Fitted on MTS-Dialog, training split (Ben Abacha et al., EACL 2023), CC BY 4.0",
      ],
      madeBy: "npm run train:roles (tests/bench/roles-train.ts)",
      calibration: { slope: 1, intercept: 0 },
      ...packed,
    },
    null,
    1,
  )}\n`,
);
console.log(`${packed.features} features kept`);
