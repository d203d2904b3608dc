/*
 * Where guidance holds: ISO 3166-1 alpha-2 codes (edition of 2020), with EU, which the standard reserves; ISO 3166-2 for a
 * part of a country ("GB-SCT"), whose form alone is looked at; the codes from XA to XZ, which the standard leaves to its
 * users, for invented countries; and "any".
 */
const CODES = new Set(
  (
    "AD AE AF AG AI AL AM AO AQ AR AS AT AU AW AX AZ BA BB BD BE BF BG BH BI BJ BL BM BN BO BQ BR BS BT BV BW BY BZ CA CC CD CF CG CH CI CK " +
    "CL CM CN CO CR CU CV CW CX CY CZ DE DJ DK DM DO DZ EC EE EG EH ER ES ET EU FI FJ FK FM FO FR GA GB GD GE GF GG GH GI GL GM GN GP GQ GR " +
    "GS GT GU GW GY HK HM HN HR HT HU ID IE IL IM IN IO IQ IR IS IT JE JM JO JP KE KG KH KI KM KN KP KR KW KY KZ LA LB LC LI LK LR LS LT LU " +
    "LV LY MA MC MD ME MF MG MH MK ML MM MN MO MP MQ MR MS MT MU MV MW MX MY MZ NA NC NE NF NG NI NL NO NP NR NU NZ OM PA PE PF PG PH PK PL " +
    "PM PN PR PS PT PW PY QA RE RO RS RU RW SA SB SC SD SE SG SH SI SJ SK SL SM SN SO SR SS ST SV SX SY SZ TC TD TF TG TH TJ TK TL TM TN TO " +
    "TR TT TV TW TZ UA UG UM US UY UZ VA VC VE VG VI VN VU WF WS YE YT ZA ZM ZW"
  ).split(" "),
);

const FORM = /^([A-Z]{2})(-[A-Z0-9]{1,3})?$/;

export function isJurisdiction(code: string): boolean {
  const country = FORM.exec(code)?.[1] ?? "";
  return code === "any" || CODES.has(country) || /^X[A-Z]$/.test(country);
}

/** The code that was probably meant by another code or the name of a country; null where none is known. */
export function jurisdictionMeant(written: string): string | null {
  const text = written.trim();
  if (/^(all|every(where)?|worldwide|world|international|int|anywhere)$/i.test(text)) return "any";
  const upper = text.toUpperCase();
  if (isJurisdiction(upper)) return upper;
  if (/^(england|scotland|wales)$/i.test(text)) return `GB-${text.slice(0, 3).toUpperCase().replace("SCO", "SCT").replace("WAL", "WLS")}`;
  const names = new Intl.DisplayNames(["en"], { type: "region", fallback: "none" });
  const named = [...CODES].find((code) => names.of(code)?.toLowerCase() === text.toLowerCase());
  if (named !== undefined) return named;
  if (!/^[A-Z]{2,3}$/.test(upper)) return null;
  // Knows "UK", and the codes of three letters.
  const canonical = new Intl.Locale(`und-${upper.slice(0, 2)}`).region;
  return upper.length === 2 && canonical !== undefined && CODES.has(canonical) ? canonical : (THREE_LETTERS[upper] ?? null);
}

/** The commonest of the three-letter codes (ISO 3166-1 alpha-3); their letters do not tell the two. */
const THREE_LETTERS: Readonly<Record<string, string>> = { AUS: "AU", CAN: "CA", DEU: "DE", FRA: "FR", GBR: "GB", IND: "IN", IRL: "IE", NZL: "NZ", SGP: "SG", USA: "US", ZAF: "ZA" };
