// `npm run train:roles [-- --data DIR]`: fits the role model on the three corpora and writes src/station/role-weights.json.
// The same data give the same bytes.
import { writeFileSync } from "node:fs";
import type { StoredWeights } from "../../src/station/weights-format.ts";
import { correct, readCorpora, readCorrections } from "./roles/corpora.ts";
import { counsellingTalks } from "./roles/counselling.ts";
import { choose, tryAll } from "./roles/decoding.ts";
import { beliefs, calibrate, fit, foldOf, read, score, weightsOf, type Raw } from "./roles/model.ts";
import { CORRECTIONS, DEFAULT_DATA, FOLDS, WEIGHTS } from "./roles/settings.ts";
import { strip, type Stripped } from "./roles/strip.ts";

const at = process.argv.indexOf("--data");
const data = at < 0 ? DEFAULT_DATA : process.argv[at + 1]!;
const consultations = [...correct(readCorpora(data), readCorrections(CORRECTIONS)), ...counsellingTalks()];

// Decoding is chosen, and confidence calibrated, on consultations that the fold's own fit has not seen.
const folds = foldOf(consultations);
const heldOut: { stripped: Stripped; raw: Raw }[] = [];
for (let fold = 0; fold < FOLDS; fold++) {
  const weights = weightsOf(fit(consultations.filter((each) => folds.get(each.id) !== fold)));
  for (const each of consultations.filter((one) => folds.get(one.id) === fold)) {
    for (const style of ["written", "bare"] as const) {
      const stripped = strip(each, style);
      heldOut.push({ stripped, raw: score(weights, stripped) });
    }
  }
  console.log(`fold ${fold + 1} of ${FOLDS} done`);
}
const decoding = choose(heldOut.map(({ stripped, raw }) => tryAll(raw, stripped.corpus, folds.get(stripped.id)!)));
const calibration = calibrate(heldOut.flatMap(({ stripped, raw }) => beliefs(stripped, read(raw, decoding))));

const packed = fit(consultations, console.log);
const stored: StoredWeights = {
  credit: [
    "Fitted on PriMock57 (Papadopoulos Korfiatis et al., ACL 2022), CC BY 4.0",
    "Fitted on ACI-Bench, train split (Yim et al., Scientific Data 2023), CC BY 4.0, with corrections of speaker tags",
    "Fitted on MTS-Dialog, training split (Ben Abacha et al., EACL 2023), CC BY 4.0",
    "Fitted on invented counselling talks (tests/bench/roles/invented.yaml, fixtures/dialogue, fixtures/talk)",
  ],
  madeBy: "npm run train:roles (tests/bench/roles-train.ts)",
  decoding,
  calibration,
  ...packed,
};
writeFileSync(WEIGHTS, `${JSON.stringify(stored, null, 1)}\n`);
console.log(`${packed.features} features kept; decoding ${JSON.stringify(decoding)}; calibration ${JSON.stringify(calibration)}`);
