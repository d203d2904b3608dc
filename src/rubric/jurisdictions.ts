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

/** Whether the text is a code as described above. */
export function isJurisdiction(code: string): boolean {
  const country = FORM.exec(code)?.[1] ?? "";
  return code === "any" || CODES.has(country) || /^X[A-Z]$/.test(country);
}

/** Members of the European Union, 27 since 1 February 2020 (Treaty on European Union, article 52, as it stands since then). */
const EU_MEMBERS = new Set("AT BE BG CY CZ DE DK EE ES FI FR GR HR HU IE IT LT LU LV MT NL PL PT RO SE SI SK".split(" "));

/** Whether what holds in the one may hold in the other: the same country, a part of it, or the EU and one of its members. */
export function overlap(one: string, other: string): boolean {
  if (one === "any" || other === "any") return true;
  const [country, part] = one.split("-");
  const [otherCountry, otherPart] = other.split("-");
  if (country === otherCountry) return part === undefined || otherPart === undefined || part === otherPart;
  return (country === "EU" && EU_MEMBERS.has(otherCountry!)) || (otherCountry === "EU" && EU_MEMBERS.has(country!));
}

/**
 * What people write besides the English names of countries, which the runtime knows. Parts of the United Kingdom by
 * ISO 3166-2; of the codes of three letters (ISO 3166-1 alpha-3) the commonest: their letters do not tell the two.
 */
const MEANT: Readonly<Record<string, string>> = {
  any: "any", all: "any", anywhere: "any", everywhere: "any", every: "any", world: "any", worldwide: "any", international: "any", int: "any",
  england: "GB-ENG", scotland: "GB-SCT", wales: "GB-WLS", "northern ireland": "GB-NIR", uk: "GB", britain: "GB", "great britain": "GB",
  america: "US", aus: "AU", can: "CA", deu: "DE", fra: "FR", gbr: "GB", ind: "IN", irl: "IE", nzl: "NZ", sgp: "SG", usa: "US", zaf: "ZA",
};

/** The code that was probably meant by another code or the name of a country; null where none is known. */
export function jurisdictionMeant(written: string): string | null {
  const text = written.trim().toLowerCase();
  if (isJurisdiction(text.toUpperCase())) return text.toUpperCase();
  if (Object.hasOwn(MEANT, text)) return MEANT[text]!;
  const names = new Intl.DisplayNames(["en"], { type: "region", fallback: "none" });
  return [...CODES].find((code) => names.of(code)?.toLowerCase() === text) ?? null;
}
