import { clamped, estimated, NO_VARIANCE, notMeasurable, type Estimate, type NotMeasurable } from "./estimate.ts";
import { intraclassCorrelations, type IntraclassForm } from "./intraclass.ts";
import { meanSquares } from "./mean-squares.ts";

export interface VarianceComponents {
  /** Of candidates, of stations, and of what is left (candidate by station, and error). Squared units of the marks; negative estimates are set to nought. */
  candidates: number;
  stations: number;
  residual: number;
}

export interface Generalizability {
  candidates: number;
  stations: number;
  components: VarianceComponents;
  /** For ranking candidates: reliability of the mean over the stations. */
  relative: Estimate;
  /** For decisions against a cut score: index of dependability, phi. */
  absolute: Estimate;
  /** The same for one station alone. */
  oneStation: Estimate;
  /** Standard error of a candidate's mean over the stations, for decisions against a cut. */
  absoluteError: number;
  /** Stations needed for a relative coefficient of 0.8, the usual bar of a high-stakes examination (common practice, no source); null when more of the same would never do. */
  stationsNeeded: number | null;
}

const BAR = 0.8;

/**
 * Reliability of the whole examination, candidates by stations, one score a cell: R. L. Brennan, Generalizability
 * Theory (2001), chapters 1 and 2. Relative coefficient = variance of candidates over itself and residual / stations;
 * absolute (phi) adds the stations' own variance / stations. The first is ICC(3,k) of Shrout and Fleiss with stations for
 * markers, phi ICC(2,k), and one station's ICC(3,1): their intervals are these.
 * @param scores `scores[candidate][station]`, complete
 */
export function generalizability(scores: readonly (readonly number[])[]): Generalizability | NotMeasurable {
  const n = scores.length;
  const k = scores[0]?.length ?? 0;
  // Without a row nothing tells how many stations there were.
  if (n > 0 && k < 2) return notMeasurable(n, "fewer than two stations");
  if (n < 2) return notMeasurable(n, "fewer than two candidates sat every station");
  const { between, columns, error } = meanSquares(scores);
  const components = {
    candidates: Math.max(0, (between - error) / k),
    stations: Math.max(0, (columns - error) / n),
    residual: error,
  };
  const { candidates, stations, residual } = components;
  if (candidates + residual < NO_VARIANCE) return notMeasurable(n, "the candidates do not differ");
  const forms = intraclassCorrelations(scores);
  const coefficient = (noise: number, form: IntraclassForm) => {
    if (candidates + noise < NO_VARIANCE) return notMeasurable(n, "the candidates do not differ");
    const same = forms[form];
    const interval = same.value === null ? null : same.interval;
    return estimated(candidates / (candidates + noise), n, null, interval && clamped(interval.low, interval.high, 0, 1));
  };
  return {
    candidates: n,
    stations: k,
    components,
    relative: coefficient(residual / k, "ICC(3,k)"),
    // Stations that do not differ add nothing: phi is then the relative coefficient.
    absolute: coefficient((residual + stations) / k, stations === 0 ? "ICC(3,k)" : "ICC(2,k)"),
    oneStation: coefficient(residual, "ICC(3,1)"),
    absoluteError: Math.sqrt((residual + stations) / k),
    stationsNeeded: candidates < NO_VARIANCE ? null : Math.max(1, Math.ceil(((BAR / (1 - BAR)) * residual) / candidates)),
  };
}
